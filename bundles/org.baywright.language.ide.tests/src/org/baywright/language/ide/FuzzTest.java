package org.baywright.language.ide;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import org.baywright.language.ide.complete.Proposal;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.junit.jupiter.api.Test;

/** Whatever a person types on the way to a rule file, each service gives an answer, and gives it soon. */
class FuzzTest {

	private static final Duration SOON = Duration.ofSeconds(5);
	private static final int STEP = 97;
	private static final long SEED = 7;

	@Test
	void prefixesOfTheExamples() {
		for (Path sample : Samples.projects()) {
			SortedMap<String, String> texts = Samples.texts(sample);
			RuleProject project = Samples.inMemory(texts);
			EditorServices services = new EditorServices(project);
			for (Map.Entry<String, String> entry : texts.entrySet()) {
				String text = entry.getValue();
				for (int at = 1; at <= text.length(); at += STEP) {
					ask(project, services, entry.getKey(), text.substring(0, at), at);
				}
				project.update(entry.getKey(), text);
			}
		}
	}

	/** Takes out or doubles a piece at random, and asks at the place of the damage. */
	@Test
	void damagedExamples() {
		Random random = new Random(SEED);
		for (Path sample : Samples.projects()) {
			SortedMap<String, String> texts = Samples.texts(sample);
			RuleProject project = Samples.inMemory(texts);
			EditorServices services = new EditorServices(project);
			for (Map.Entry<String, String> entry : texts.entrySet()) {
				String text = entry.getValue();
				for (int i = 0; i < 25; i++) {
					int from = random.nextInt(text.length());
					int to = Math.min(text.length(), from + random.nextInt(12));
					String piece = random.nextBoolean() ? "" : text.substring(from, to) + "\"{}().,;^/*".charAt(random.nextInt(11));
					ask(project, services, entry.getKey(), text.substring(0, from) + piece + text.substring(to), from + piece.length());
				}
				project.update(entry.getKey(), text);
			}
		}
	}

	private static void ask(RuleProject project, EditorServices services, String file, String text, int at) {
		assertTimeoutPreemptively(SOON, () -> {
			project.update(file, text);
			for (Proposal proposal : services.complete(file, at)) {
				assertTrue(proposal.replaceOffset() >= 0 && proposal.replaceOffset() + proposal.replaceLength() == at);
			}
			services.hover(file, at).ifPresent(hover -> assertTrue(hover.offset() + hover.length() <= text.length()));
			services.references(file, at, true);
			services.rename(file, at, "other_name");
			assertNotNull(services.outline(file));
			services.folds(file).forEach(fold -> assertTrue(fold.offset() + fold.length() <= text.length()));
			services.colours(file).forEach(word -> assertTrue(word.offset() + word.length() <= text.length()));
			services.minings(file, Optional.empty());
			services.format(file);
			services.fixes(file, at, 0, project.snapshot(), Optional.empty());
			for (String typed : new String[] { "\n", "\"", "{", "}" }) {
				EditorServices.autoEdit(text, at, typed);
			}
		}, () -> "too slow: " + file + " at " + at);
	}
}
