package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Finding;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.testing.MarkedFindings;
import org.baywright.model.Severity;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.IGrammarAccess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages of help: what they show as wrong is found, what they show as right is not. */
class HelpPagesTest {

	private static final int WIDTH = 100;

	static Stream<String> ids() {
		return Checks.ids().stream();
	}

	/** Returns what the checks say of themselves; their own type belongs to the proofs. */
	static List<RuleCheck> abouts() {
		List<RuleCheck> abouts = new ArrayList<>();
		for (Object check : Checks.all()) {
			abouts.add(check.getClass().getAnnotation(RuleCheck.class));
		}
		return abouts;
	}

	/** What the sources report by name, and what the page on problems explains, is the same. */
	@Test
	void everyProblemOfATextIsExplained() throws IOException {
		Pattern reported = Pattern.compile("(?:\\b(?:error|flaw|warning|note)|new Problem)\\(\\s*\"([a-z0-9]+(?:-[a-z0-9]+)*)\"");
		Set<String> found = new TreeSet<>();
		StringBuilder sources = new StringBuilder();
		for (String bundle : List.of("language", "cli")) {
			try (Stream<Path> files = Files.walk(Path.of("../org.baywright." + bundle + "/src"))) {
				for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
					String source = Files.readString(file);
					sources.append(source);
					reported.matcher(source).results().forEach(match -> found.add(match.group(1)));
				}
			}
		}
		assertTrue(found.size() > 40, "only " + found + " are seen");
		List<String> explained = HelpPages.problems();
		assertEquals(List.of(), found.stream().filter(id -> !explained.contains(id)).toList());
		assertEquals(List.of(), explained.stream().filter(id -> !sources.toString().contains('"' + id + '"')
				&& !sources.toString().contains('"' + id.replaceFirst("[a-z]+$", "") + '"')).toList());
		for (String id : explained) {
			assertTrue(HelpPages.page(id).orElseThrow().startsWith("# " + id + ": "), id);
		}
	}

	private static RuleCheck about(String id) {
		return abouts().stream().filter(check -> check.id().equals(id)).findFirst().orElseThrow();
	}

	private static String page(String id) {
		try (InputStream in = RuleCheck.class.getResourceAsStream("/help/" + id + ".md")) {
			assertNotNull(in, id);
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns the rule texts of a page: its indented blocks. */
	private static List<String> examples(String page) {
		List<String> blocks = new ArrayList<>();
		boolean inside = false;
		for (String line : page.split("\n")) {
			if (line.startsWith("    ")) {
				if (!inside) {
					blocks.add("");
				}
				blocks.set(blocks.size() - 1, blocks.get(blocks.size() - 1) + line.substring(4) + "\n");
			}
			inside = line.startsWith("    ");
		}
		return blocks;
	}

	@ParameterizedTest
	@MethodSource("ids")
	void thePageSaysWhatThereIsToSay(String id) {
		String page = page(id);
		boolean error = about(id).severity() == Severity.ERROR;
		assertTrue(page.startsWith("# " + id + ": "), page);
		assertTrue(page.contains(error ? "\n\nAn error. " : "\n\nA warning. "), page);
		List<String> headings = page.lines().filter(line -> line.startsWith("## ")).map(line -> line.substring(3)).toList();
		List<String> expected = new ArrayList<>(List.of("What it means", "Example", "Put right", "Why it matters",
				"What to do", "When to accept it", "Exactly", "Where it comes from"));
		expected.retainAll(headings);
		assertEquals(expected, headings);
		assertTrue(headings.containsAll(
				List.of("What it means", "Example", "Why it matters", "What to do", "When to accept it", "Exactly")), page);
		assertEquals(error, page.contains("Never. An error cannot be accepted"), page);
		page.lines().forEach(line -> assertTrue(line.length() <= WIDTH || line.startsWith("    "), line));
	}

	@ParameterizedTest
	@MethodSource("ids")
	void whatIsWrongIsFoundAndWhatIsRightIsNot(String id) {
		List<String> examples = examples(page(id));
		if (id.equals("undecided")) {
			assertEquals(List.of(), examples, "no small text shows it");
			return;
		}
		assertEquals(2, examples.size(), id);
		MarkedFindings wrong = MarkedFindings.of(examples.get(0));
		MarkedFindings right = MarkedFindings.of(examples.get(1));
		assertEquals(List.of(), wrong.problems());
		assertEquals(List.of(), right.problems());
		assertTrue(wrong.ids().stream().anyMatch(finding -> finding.startsWith(id + ":")), wrong.ids()::toString);
		assertFalse(right.ids().stream().anyMatch(finding -> finding.startsWith(id + ":")), right.ids()::toString);
		Set<String> others = new TreeSet<>(right.report().findings().stream()
				.filter(finding -> finding.severity() == Severity.ERROR).map(Finding::check).toList());
		assertEquals(Set.of(), others, "what is put right must not be wrong in another way");
	}

	@Test
	void theLanguagePageIsOneProjectWithoutProblems() {
		MarkedFindings all = MarkedFindings.of(String.join("\n", examples(page("language"))));
		assertEquals(List.of(), all.problems());
		assertFalse(all.report().hasErrors(), all.ids()::toString);
		assertTrue(all.report().cases().stream().allMatch(CaseResult::passed));
	}

	@Test
	void theLanguagePageShowsEveryWordOfTheLanguage() {
		IGrammarAccess grammar = BayStandaloneSetup.injector().getInstance(IGrammarAccess.class);
		String examples = String.join("\n", examples(page("language")));
		String text = page("language");
		Set<String> missing = new TreeSet<>();
		for (String word : GrammarUtil.getAllKeywords(grammar.getGrammar())) {
			boolean isWord = Character.isLetter(word.charAt(0));
			boolean shown = isWord ? examples.matches("(?s).*\\b" + word + "\\b.*") : text.contains(word);
			if (!shown) {
				missing.add(word);
			}
		}
		assertEquals(Set.of(), missing);
	}

	@Test
	void theLanguagePageListsEveryCheck() {
		String page = page("language");
		for (RuleCheck check : abouts()) {
			String line = "- " + check.id() + " (" + (check.severity() == Severity.ERROR ? "error" : "warning") + "): "
					+ check.summary() + ".";
			assertTrue(page.replaceAll("\n  ", " ").contains(line), line);
		}
	}
}
