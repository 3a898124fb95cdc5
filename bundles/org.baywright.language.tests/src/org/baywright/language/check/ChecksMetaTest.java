package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.language.testing.Samples;
import org.junit.jupiter.api.Test;

/** No check without a page of help, a flawed file and a test class; and none of these without a check. */
class ChecksMetaTest {

	private static final Set<String> OTHER_TESTS = Set.of("ChecksMetaTest", "HelpPagesTest");
	private static final Path ROOT = Samples.flawed().getParent().getParent();

	private static Set<String> names(Path folder, String ending) throws IOException {
		try (Stream<Path> files = Files.list(folder)) {
			return files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(ending))
					.map(name -> name.substring(0, name.length() - ending.length()))
					.collect(Collectors.toCollection(TreeSet::new));
		}
	}

	@Test
	void everyCheckSaysWhatItFinds() {
		Set<String> summaries = new TreeSet<>();
		for (RuleCheck check : HelpPagesTest.abouts()) {
			String summary = check.summary();
			assertTrue(Character.isUpperCase(summary.charAt(0)), summary);
			assertFalse(summary.endsWith("."), summary);
			assertTrue(summaries.add(summary), summary);
			assertTrue(check.id().matches("[a-z]+(-[a-z]+)*"), check.id());
		}
		assertEquals(Checks.all().size(), Checks.ids().size());
		assertEquals(Checks.ids().size(), new TreeSet<>(Checks.ids()).size());
	}

	@Test
	void everyCheckHasAPage() throws IOException {
		Set<String> pages = names(ROOT.resolve("bundles/org.baywright.analysis/help"), ".md");
		assertTrue(pages.remove("language"));
		assertTrue(pages.remove(HelpPages.PROBLEMS));
		assertEquals(new TreeSet<>(Checks.ids()), pages);
	}

	@Test
	void everyCheckHasAFlawedFileButTheOneThatNoSmallFileShows() throws IOException {
		Set<String> shown = new TreeSet<>(Checks.ids());
		assertTrue(shown.remove("undecided"));
		assertEquals(shown, names(Samples.flawed(), ".bay"));
	}

	@Test
	void everyCheckHasATestClass() throws IOException {
		Set<String> classes = new TreeSet<>();
		for (Object check : Checks.all()) {
			classes.add(check.getClass().getSimpleName());
		}
		Set<String> tested = names(
				ROOT.resolve("bundles/org.baywright.language.tests/src/org/baywright/language/check"), "Test.java");
		OTHER_TESTS.forEach(other -> assertTrue(tested.remove(other.substring(0, other.length() - "Test".length())), other));
		assertEquals(classes, tested);
	}
}
