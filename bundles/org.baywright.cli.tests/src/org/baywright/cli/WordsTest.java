package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

/** One word for one thing: what the page of words says is not used is not used where a user reads. */
class WordsTest {

	private static final Path PAGE = TestFiles.root().resolve("bundles/org.baywright.workbench/help/words.md");
	private static final Pattern ENTRY = Pattern.compile("(?m)^- \\*\\*([^*]+)\\*\\*((?:.*\\R(?!- |#|\\R))*.*)");
	private static final Pattern NOT = Pattern.compile("Not:\\s([^.]+)\\.");

	/** Returns the words that are not used, each with the one that is used in its place. */
	private static Map<String, String> unused() throws IOException {
		Map<String, String> unused = new TreeMap<>();
		Matcher entry = ENTRY.matcher(Files.readString(PAGE));
		while (entry.find()) {
			Matcher not = NOT.matcher(entry.group(2).replaceAll("\\s+", " "));
			while (not.find()) {
				for (String word : not.group(1).split(", ")) {
					unused.put(word.strip(), entry.group(1));
				}
			}
		}
		return unused;
	}

	/** Returns what users read: help, messages of the screens, README, and the texts of the command line. */
	private static List<Path> read() throws IOException {
		Path root = TestFiles.root();
		List<Path> all = new ArrayList<>(List.of(root.resolve("README.md")));
		try (Stream<Path> files = Files.walk(root.resolve("bundles"))) {
			files.filter(file -> !file.toString().contains("/target/") && !file.equals(PAGE))
					.filter(file -> file.toString().endsWith(".properties") || file.toString().contains("/help/") && file.toString().endsWith(".md"))
					.forEach(all::add);
		}
		return all.stream().sorted().toList();
	}

	private static List<String> found(String text, Map<String, String> unused) {
		List<String> found = new ArrayList<>();
		unused.forEach((word, better) -> {
			if (Pattern.compile("(?i)\\b" + Pattern.quote(word) + "s?\\b").matcher(text).find()) {
				found.add(word + " (say " + better.toLowerCase() + ")");
			}
		});
		return found;
	}

	@Test
	void wordsThatAreNotUsedStandNowhere() throws IOException {
		Map<String, String> unused = unused();
		assertTrue(unused.size() > 10, unused.toString());
		List<String> wrong = new ArrayList<>();
		for (Path file : read()) {
			found(Files.readString(file), unused).forEach(word -> wrong.add(TestFiles.root().relativize(file) + ": " + word));
		}
		assertEquals(List.of(), wrong);
	}

	@Test
	void aWordThatIsNotUsedIsSeen() throws IOException {
		assertEquals(List.of("symptom (say sign)"), found("Two Symptoms at once", unused()));
		assertEquals(List.of(), found("Two signs at once", unused()));
	}
}
