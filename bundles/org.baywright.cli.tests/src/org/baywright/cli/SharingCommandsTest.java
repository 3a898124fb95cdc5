package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sharing by the command line: Ann shares the van, Bob joins. */
class SharingCommandsTest {

	private static final String RULES = "rules/starting.bay";

	@TempDir
	Path folder;

	@BeforeEach
	void share() throws IOException {
		folder = folder.toRealPath();
		TestFiles.copy(TestFiles.own("projects/van"), folder.resolve("van"));
		assertEquals("Shared van at " + folder.resolve("place") + ". Others join it by: baywright join \"" + folder.resolve("place") + "\" FOLDER --author NAME\n", run("share", "van", "place", "--author", "Ann Lee").out());
		assertEquals("Your copy is in bob.\n", run("join", "place", "bob", "--author", "Bob").out());
	}

	private Runs.Result run(String... args) {
		return new Runs(folder).run(args);
	}

	private void edit(String copy, String before, String after) throws IOException {
		Path file = folder.resolve(copy).resolve(RULES);
		String text = Files.readString(file);
		assertTrue(text.contains(before), text);
		Files.writeString(file, text.replace(before, after));
	}

	private String rules(String copy) throws IOException {
		return Files.readString(folder.resolve(copy).resolve(RULES));
	}

	private void assertSound(String repository) throws IOException, InterruptedException {
		assertEquals("", StockGit.run(folder.resolve(repository), "fsck", "--strict", "--no-dangling", "--no-progress").out());
	}

	@Test
	void titlesThatBeginAlikeAreSeveralOffers() throws IOException {
		String first = rules("bob").lines().filter(line -> line.startsWith("rule ")).findFirst().get();
		String begin = "Shorten the titles of all the rules about starting";
		edit("bob", first, first.replaceFirst("\"", "\"One: "));
		assertEquals(ExitCode.FINE, run("offer", begin + " for the tarn", "--in", "bob").code());
		edit("bob", "\"One: ", "\"Two: ");
		assertEquals(ExitCode.FINE, run("offer", begin + " for the rook", "--in", "bob").code());
		edit("bob", "\"Two: ", "\"Three: ");
		assertEquals(ExitCode.FINE, run("offer", begin + " for the rook!", "--in", "bob").code());
		String offered = run("offers", "--in", "van").out();
		for (String end : List.of("for the tarn (", "for the rook (", "for the rook! (")) {
			assertTrue(offered.contains(end), offered);
		}
	}

	@Test
	void aFileThatIsNoTextIsNotTakenOver() throws IOException {
		Files.write(folder.resolve("bob/bad.bay"), new byte[] { (byte) 0xFF, (byte) 0xFE, 0, 1 });
		assertEquals(ExitCode.FINE, run("offer", "Bad", "--in", "bob").code());
		Runs.Result refused = run("take-over", "bob/bad", "--in", "van");
		assertEquals(ExitCode.FLAWS, refused.code());
		assertTrue(refused.err().contains("bad.bay: This is no text in UTF-8"), refused.err());
	}

	@Test
	void aChangeGoesFromOneToAll() throws IOException, InterruptedException {
		String title = rules("bob").lines().filter(line -> line.startsWith("rule ")).findFirst().get();
		String name = title.split(" ")[1];
		edit("bob", title, title.replaceFirst("\"", "\"In short: "));
		assertEquals("bob/short-titles\n  changed  rule " + name + " (rules/starting.bay)\n", run("offer", "Short titles", "--note", "They read better.", "--in", "bob").out());
		Runs.Result list = run("offers", "--in", "van");
		assertTrue(list.out().matches("bob/short-titles  Short titles \\(Bob, \\d{4}-\\d\\d-\\d\\d\\)\n  They read better.\n"), list.out());
		assertTrue(run("offers", "bob/short-titles", "--in", "van").out().contains("says now  " + title.replaceFirst("\"", "\"In short: ")));
		assertEquals("There is no offer bob/short-title. Did you mean bob/short-titles?\n", run("offers", "bob/short-title", "--in", "van").err());
		assertEquals("Took over bob/short-titles.\n  changed  rule " + name + " (rules/starting.bay)\n", run("take-over", "bob/short-titles", "--in", "van").out());
		assertEquals(rules("bob"), rules("van"));
		assertTrue(run("news", "--again", "--in", "bob").out().contains("Ann Lee: Take over \"Short titles\" of Bob"));
		assertTrue(run("news", "--in", "bob").out().contains("changed  rule " + name));
		assertEquals("Nothing is new.\n", run("news", "--in", "bob").out());
		assertEquals("There is nothing new for your copy.\n", run("catch-up", "--in", "bob").out());
		Runs.Result history = run("history", name, "--in", "bob");
		assertTrue(history.out().contains("  written  by Ann Lee on ") && history.out().contains("  changed  by Bob on "), history.out());
		assertEquals(ExitCode.FLAWS, run("history", "no_such_name", "--in", "bob").code());
		assertEquals("Undone: Took over \"Short titles\"\n", run("undo", "--in", "van").out());
		assertTrue(rules("van").contains(title));
		assertTrue(run("undo", "--list", "--in", "van").out().matches("2  \\S+  Undone: Took over \"Short titles\"\n1  \\S+  Took over \"Short titles\" \\(undone\\)\n"));
		for (String repository : new String[] { "place", "van", "bob" }) {
			assertSound(repository);
		}
	}

	@Test
	void whatHasToBeChosenIsToldWithBothSides() throws IOException {
		String line = rules("bob").lines().filter(text -> text.contains("  below ")).findFirst().get();
		edit("bob", line, line.replace("confirms", "suspects"));
		run("offer", "Bob's", "--in", "bob");
		edit("van", line, line.replace("confirms", "clears"));
		Runs.Result result = run("take-over", "bob/bob-s", "--in", "van", "--with-errors");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertTrue(result.out().contains("Your copy is not brought up yet"), result.out());
		result = run("catch-up", "--in", "van");
		assertEquals(ExitCode.FLAWS, result.code());
		assertTrue(result.err().contains("\n  yours:\n    no longer says  " + line.strip()), result.err());
		String element = result.err().substring(0, result.err().indexOf(" (rules/starting.bay)"));
		assertEquals(ExitCode.FINE, run("catch-up", "--choose", element + "=theirs", "--in", "van").code());
		assertEquals(rules("bob"), rules("van"));
		assertEquals("Write what to choose as ELEMENT=ours, ELEMENT=theirs or ELEMENT=FILE: x\n", run("catch-up", "--choose", "x", "--in", "van").err());
	}

	@Test
	void whatWouldBringErrorsIsNotTakenOver() throws IOException {
		edit("bob", rules("bob").lines().filter(text -> text.contains("  below ")).findFirst().get(), "  below : confirms battery.no_such_fault");
		run("offer", "Wrong", "--in", "bob");
		String before = rules("van");
		Runs.Result result = run("take-over", "bob/wrong", "--in", "van");
		assertEquals(ExitCode.FLAWS, result.code());
		assertTrue(result.err().contains("no_such_fault"), result.err());
		assertTrue(result.err().endsWith("Ask for a change of the offer, or use --with-errors.\n"), result.err());
		assertEquals(before, rules("van"));
		assertEquals("Withdrew bob/wrong.\n", run("withdraw", "bob/wrong", "--in", "bob").out());
		assertEquals("Nothing is offered.\n", run("offers", "--in", "van").out());
		assertTrue(run("offers", "--all", "--in", "van").out().contains(", withdrawn)"));
	}

	@Test
	void theProcessSaysNothingBesides() throws IOException, InterruptedException {
		Runs.Result result = new Command(folder).run("offers", "--in", "bob");
		assertEquals(ExitCode.FINE, result.code());
		assertEquals("Nothing is offered.\n", result.out());
		assertEquals("", result.err());
		result = new Command(folder).run("offers");
		assertEquals(ExitCode.FILES, result.code());
		assertEquals(folder + "/. is not shared yet. Share it first, or join a shared place.\n", result.err());
	}

	/** Whenever a program is killed, Git finds both repositories sound, files are whole, and the next step goes on from there. */
	@Test
	void whoKillsItLosesNothing() throws IOException, InterruptedException {
		Random random = new Random(7);
		String plain = rules("bob");
		for (int i = 0; i < 6; i++) {
			String before = rules("van");
			for (int file = 0; file < 20; file++) {
				Files.writeString(folder.resolve("bob/more" + file + ".bay"), "sign s" + file + " \"Round " + i + "\"\n");
			}
			Process offering = new Command(folder).start("offer", "Round " + i, "--in", "bob");
			offering.waitFor(200 + random.nextInt(900), TimeUnit.MILLISECONDS);
			kill(offering);
			assertSound("place");
			assertSound("bob");
			assertEquals(plain, rules("bob"));
			Runs.Result offered = run("offer", "Round " + i, "--in", "bob");
			assertEquals(ExitCode.FINE, offered.code(), offered.err());
			Process taking = new Command(folder).start("take-over", "bob/round-" + i, "--in", "van");
			taking.waitFor(500 + random.nextInt(1500), TimeUnit.MILLISECONDS);
			kill(taking);
			assertSound("place");
			assertSound("van");
			for (int file = 0; file < 20; file++) {
				Path path = folder.resolve("van/more" + file + ".bay");
				String now = Files.exists(path) ? Files.readString(path) : "";
				assertTrue(now.isEmpty() && i == 0 || now.matches("sign s" + file + " \"Round (" + i + "|" + (i - 1) + ")\"\n"), now);
			}
			assertEquals(before, rules("van"));
			Runs.Result taken = run("take-over", "bob/round-" + i, "--in", "van");
			assertTrue(taken.code() == ExitCode.FINE || taken.err().equals("The offer bob/round-" + i + " is taken over already.\n"), taken.err());
			assertEquals(ExitCode.FINE, run("catch-up", "--in", "van").code());
			assertEquals("sign s7 \"Round " + i + "\"\n", Files.readString(folder.resolve("van/more7.bay")));
			assertEquals("", StockGit.run(folder.resolve("van"), "status", "--porcelain").out());
		}
	}

	private static void kill(Process process) throws InterruptedException {
		process.descendants().forEach(ProcessHandle::destroyForcibly);
		process.destroyForcibly().waitFor();
	}
}
