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
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.MarkedText;
import org.baywright.language.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.IGrammarAccess;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
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

	/** Kinds that files have and texts have not, or texts that are too large to be shown. */
	private static final Set<ProblemKind> NOT_SHOWN = EnumSet.of(ProblemKind.CHANGED_MEANWHILE, ProblemKind.FILE_PASSED_OVER,
			ProblemKind.NOT_UTF8, ProblemKind.PICTURE_MISSING, ProblemKind.PICTURE_TOO_LARGE, ProblemKind.TEXT_TOO_LONG, ProblemKind.TOO_DEEP, ProblemKind.UNREADABLE_FILE,
			ProblemKind.UNREADABLE_FOLDER);

	@Test
	void thePageOnProblemsHasASectionForEachKindAndNoOther() {
		assertEquals(Arrays.stream(ProblemKind.values()).map(ProblemKind::id).sorted().toList(), HelpPages.problems());
		page(HelpPages.PROBLEMS).lines().forEach(line -> assertTrue(line.length() <= WIDTH || line.startsWith("    "), line));
	}

	/** Projects beside that of the examples, for what they say of others. */
	@TempDir
	static Path beside;

	@BeforeAll
	static void writeOthers() throws IOException {
		Files.writeString(Files.createDirectories(beside.resolve("charging")).resolve("charging.bay"), "sign lamp_flickers\n");
		Files.writeString(Files.createDirectories(beside.resolve("broken")).resolve("broken.bay"), "sign a sign sign\n");
		Files.writeString(beside.resolve("old.baypack"), "no pack");
		Path pictures = Files.createDirectories(beside.resolve("help/pictures"));
		Files.write(pictures.resolve("battery.jpg"), new byte[] { (byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xC0, 0, 8, 8, 0, 17, 0, 31, 1, (byte) 0xFF, (byte) 0xD9 });
		Files.write(pictures.resolve("posts.png"), new byte[] { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n', 0, 0, 0, 13, 'I', 'H', 'D', 'R', 0, 0, 0, 31, 0, 0, 0, 17,
				8, 2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 'I', 'E', 'N', 'D', (byte) 0xAE, 0x42, 0x60, (byte) 0x82 });
		Path socket = Files.createDirectories(beside.resolve("trailer-socket"));
		for (Map.Entry<String, String> file : Samples.texts(Samples.flawed().resolveSibling("trailer-socket")).entrySet()) {
			Files.writeString(socket.resolve(file.getKey()), file.getValue());
		}
	}

	/** A section says what is wrong, shows it as marked text beside the rules of the page on the language, and says what to do. */
	@ParameterizedTest
	@EnumSource(ProblemKind.class)
	void theSectionExplainsTheProblem(ProblemKind kind) {
		String section = HelpPages.page(kind.id()).orElseThrow();
		assertTrue(section.startsWith("# " + kind.id() + ": " + kind.title() + "\n\n" + switch (kind.severity()) {
		case ERROR -> "An error. ";
		case WARNING -> "A warning. ";
		case NOTE -> "A note. ";
		}), section);
		assertTrue(section.contains("\n\nWhat to do: "), section);
		List<String> examples = examples(section);
		assertEquals(NOT_SHOWN.contains(kind) ? 0 : 1, examples.size(), kind::id);
		for (String example : examples) {
			RuleProject project = RuleProject.unread(beside.resolve("help"));
			project.update("language.bay", String.join("\n", examples(page("language"))));
			MarkedText.check(example, project);
			assertTrue(example.contains("^ " + kind.severity().name().toLowerCase(Locale.ROOT) + " " + kind.id() + ": "), example);
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
		MarkedFlaws wrong = MarkedFlaws.of(examples.get(0));
		MarkedFlaws right = MarkedFlaws.of(examples.get(1));
		assertEquals(List.of(), wrong.problems());
		assertEquals(List.of(), right.problems());
		assertTrue(wrong.ids().stream().anyMatch(flaw -> flaw.startsWith(id + ":")), wrong.ids()::toString);
		assertFalse(right.ids().stream().anyMatch(flaw -> flaw.startsWith(id + ":")), right.ids()::toString);
		Set<String> others = new TreeSet<>(right.report().flaws().stream()
				.filter(flaw -> flaw.severity() == Severity.ERROR).map(Flaw::check).toList());
		assertEquals(Set.of(), others, "what is put right must not be wrong in another way");
	}

	@Test
	void theLanguagePageIsOneProjectWithoutProblems() {
		MarkedFlaws all = MarkedFlaws.of(String.join("\n", examples(page("language"))));
		// pictures lie beside files, and here is but a text
		assertEquals(List.of(), all.problems().stream().filter(problem -> !problem.contains(" picture-missing: ")).toList());
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
