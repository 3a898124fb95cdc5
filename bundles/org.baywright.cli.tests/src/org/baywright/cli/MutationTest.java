package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged rule files and packs never end in a failure of Baywright itself: prefixes and random changes of every example
 * go through check, tidy and pack, and what was packed, damaged too, through show and verify. The same ones each time.
 * {@code -Dbaywright.mutations=200000} makes the long run, and {@code -Dbaywright.seed=7} others of its kind.
 */
class MutationTest {

	private static final int MUTATIONS = Integer.getInteger("baywright.mutations", 400);
	private static final long SEED = Long.getLong("baywright.seed", 20260302);
	private static final String PIECES = "\"{}().,;:^/*\u00e4\u202e\\\n\t0-+";

	@TempDir
	private Path folder;

	private static List<Path> examples() throws IOException {
		try (Stream<Path> files = Files.walk(TestFiles.root().resolve("rules-examples"))) {
			return files.filter(file -> file.toString().endsWith(".bay")).sorted().toList();
		}
	}

	@Test
	void damagedRules() throws IOException {
		Random random = new Random(SEED);
		List<Path> examples = examples();
		assertTrue(examples.size() > 20, examples::toString);
		List<String> failures = new ArrayList<>();
		for (int i = 0; i < MUTATIONS && failures.size() < 3; i++) {
			// the first round takes each file as it is
			String text = Files.readString(examples.get(i % examples.size()));
			String damaged = i < examples.size() ? text : damaged(text, random);
			Files.writeString(Files.createDirectories(folder.resolve("p")).resolve("x.bay"), damaged);
			Files.deleteIfExists(folder.resolve("p.baypack"));
			for (String[] args : new String[][] { { "check", "p" }, { "check", "p", "--format", "json" }, { "pack", "p" }, { "tidy", "p" },
					{ "tidy", "--check", "p" } }) {
				Runs.Result result = new Runs(folder).run(args);
				boolean twiceTidy = !args[0].equals("tidy") || args.length == 2 || !result.out().contains("1 not well laid out");
				if (result.code() == ExitCode.INTERNAL || !twiceTidy) {
					Path kept = Files.writeString(Files.createTempFile("baywright-mutation", ".bay"), damaged);
					failures.add(String.join(" ", args) + " of " + kept + " (" + examples.get(i % examples.size()).getFileName() + "): "
							+ result.err().lines().limit(6).toList());
				}
			}
		}
		assertEquals(List.of(), failures);
	}

	private static String damaged(String text, Random random) {
		if (random.nextInt(4) == 0) {
			return text.substring(0, random.nextInt(text.length() + 1));
		}
		StringBuilder now = new StringBuilder(text);
		for (int changes = 1 + random.nextInt(3); changes > 0 && now.length() > 0; changes--) {
			int from = random.nextInt(now.length());
			int to = Math.min(now.length(), from + 1 + random.nextInt(40));
			switch (random.nextInt(5)) {
			case 0 -> now.delete(from, to);
			case 1 -> now.insert(from, now.substring(from, to));
			case 2 -> now.insert(from, PIECES.charAt(random.nextInt(PIECES.length())));
			case 3 -> {
				String line = lineAt(now, from);
				now.insert(Math.max(0, now.lastIndexOf("\n", from) + 1), line + "\n");
			}
			default -> {
				String other = lineAt(now, random.nextInt(now.length()));
				now.insert(Math.max(0, now.lastIndexOf("\n", from) + 1), other + "\n");
			}
			}
		}
		return now.toString();
	}

	private static String lineAt(StringBuilder text, int at) {
		int from = text.lastIndexOf("\n", Math.max(0, at - 1)) + 1;
		int to = text.indexOf("\n", from);
		return text.substring(from, to < 0 ? text.length() : to);
	}

	@Test
	void damagedPacks() throws IOException {
		TestFiles.copy(TestFiles.own("projects/van"), folder.resolve("van"));
		assertEquals(ExitCode.FINE, new Runs(folder).run("pack", "van").code());
		byte[] whole = Files.readAllBytes(folder.resolve("van.baypack"));
		String shown = new Runs(folder).run("show", "van.baypack", "--rules").out();
		Random random = new Random(SEED);
		List<String> failures = new ArrayList<>();
		for (int i = 0; i < MUTATIONS && failures.size() < 3; i++) {
			byte[] pack = whole.clone();
			for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
				pack[random.nextInt(pack.length)] = (byte) random.nextInt(256);
			}
			byte[] damaged = random.nextInt(5) == 0 ? java.util.Arrays.copyOf(pack, random.nextInt(pack.length)) : pack;
			Files.write(folder.resolve("x.baypack"), damaged);
			for (String[] args : new String[][] { { "show", "x.baypack", "--rules" }, { "verify", "x.baypack" } }) {
				Runs.Result result = new Runs(folder).run(args);
				// damage around the entries shows nothing wrong; verify tells it
				boolean right = args[0].equals("show") ? result.out().equals(shown) : java.util.Arrays.equals(whole, damaged);
				if (result.code() == ExitCode.INTERNAL || result.code() == ExitCode.FINE && !right) {
					failures.add(String.join(" ", args) + " at " + i + ": " + result.code() + " "
							+ new String(result.err().getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8).lines().limit(6).toList());
				}
			}
		}
		assertEquals(List.of(), failures);
	}
}
