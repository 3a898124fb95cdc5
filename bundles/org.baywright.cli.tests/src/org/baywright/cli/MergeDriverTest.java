package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The merge of rules inside {@code git merge}, by the stock command of Git. */
class MergeDriverTest {

	private static final String RULES = """
			sign no_crank "Does not crank"

			rule flat "Flat" {
			  given no_crank
			  then : suspects battery.flat
			  because "Seen often."
			}
			""";

	@TempDir
	Path folder;

	@BeforeEach
	void begin() throws IOException, InterruptedException {
		folder = folder.toRealPath();
		git("init", "-q", "-b", "main");
		git("config", "merge.bay.driver", new Command(folder).line("merge-driver", "%O", "%A", "%B", "%P"));
		Files.writeString(folder.resolve(".gitattributes"), "*.bay merge=bay\n");
		commit(RULES);
		git("branch", "theirs");
	}

	private String git(String... args) throws IOException, InterruptedException {
		Runs.Result result = StockGit.run(folder, args);
		assertEquals(0, result.code(), result.out());
		return result.out();
	}

	private void commit(String rules) throws IOException, InterruptedException {
		Files.writeString(folder.resolve("rules.bay"), rules);
		git("add", "-A");
		git("commit", "-q", "-m", "Rules");
	}

	/** Commits on both sides and merges. */
	private Runs.Result merge(String ours, String theirs) throws IOException, InterruptedException {
		commit(ours);
		git("checkout", "-q", "theirs");
		commit(theirs);
		git("checkout", "-q", "main");
		return StockGit.run(folder, "merge", "--no-edit", "theirs");
	}

	private String rules() throws IOException {
		return Files.readString(folder.resolve("rules.bay"));
	}

	@Test
	void whatBothAppendAndBothChangeGoesTogether() throws IOException, InterruptedException {
		String review = "review flat by \"%s\" on 2026-03-04 agrees meaning \"1234abcd\"\n";
		Runs.Result result = merge(RULES.replace("suspects", "clears") + review.formatted("Ann"), RULES.replace("Seen often.", "Seen.") + review.formatted("Bob"));
		assertEquals(0, result.code(), result.out());
		assertEquals(RULES.replace("suspects", "clears").replace("Seen often.", "Seen.") + review.formatted("Ann") + review.formatted("Bob"), rules());
		assertEquals("", git("status", "--porcelain"));
		assertEquals("", git("fsck", "--strict", "--no-progress"));
	}

	@Test
	void aConflictLeavesOursWithoutMarksAndTellsBoth() throws IOException, InterruptedException {
		String ours = RULES.replace("suspects", "clears");
		Runs.Result result = merge(ours, RULES.replace("suspects", "confirms"));
		assertEquals(1, result.code(), result.out());
		assertEquals(ours, rules());
		assertEquals("UU rules.bay\n", git("status", "--porcelain"));
		assertTrue(result.out().contains("rule flat (rules.bay) was changed on both sides; ours stands in the file:\n  ours:\n    no longer says  then : suspects battery.flat\n"
				+ "    says now  then : clears battery.flat\n  theirs:\n    no longer says  then : suspects battery.flat\n    says now  then : confirms battery.flat\n"), result.out());
		git("commit", "-q", "-a", "-m", "Ours");
	}

	@Test
	void withoutIt() throws IOException, InterruptedException {
		git("config", "--unset", "merge.bay.driver");
		assertEquals(1, merge(RULES + "sign a\n", RULES + "sign b\n").code());
		assertTrue(rules().contains("<<<<<<<")); // so the other tests see what the driver does
	}

	@Test
	void filesThatCannotBeReadAreLeft() throws IOException {
		Files.writeString(folder.resolve("base"), RULES);
		Files.writeString(folder.resolve("ours"), RULES);
		Runs runs = new Runs(folder);
		assertEquals(ExitCode.FILES, runs.run("merge-driver", "base", "ours", "no").code());
		assertEquals(RULES, Files.readString(folder.resolve("ours")));
		byte[] latin = { 's', 'i', 'g', 'n', ' ', (byte) 0xE4, '\n' };
		Files.write(folder.resolve("theirs"), latin);
		assertEquals(ExitCode.FINE, runs.run("merge-driver", "base", "ours", "theirs").code());
		assertArrayEquals(latin, Files.readAllBytes(folder.resolve("ours")));
		Files.writeString(folder.resolve("ours"), "sign x\n");
		Runs.Result result = runs.run("merge-driver", "base", "ours", "theirs", "rules.bay");
		assertEquals(ExitCode.FLAWS, result.code());
		assertTrue(result.err().startsWith("rules.bay holds bytes that are no text in UTF-8"), result.err());
		assertEquals("sign x\n", Files.readString(folder.resolve("ours")));
		assertFalse(Files.exists(folder.resolve("rules.bay.orig")));
	}
}
