package org.baywright.language.workspace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.regex.Pattern;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.syntax.SyntaxProblems;
import org.baywright.language.testing.Meaning;
import org.baywright.language.testing.Samples;
import org.baywright.language.text.SourceText;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.IParser;
import org.junit.jupiter.api.Test;

/** Whatever a person types on the way to a rule file, the project gives a model and problems, and gives them soon. */
class TypingTest {

	private static final Duration SOON = Duration.ofSeconds(5);
	private static final Duration OF_ONE_ELEMENT = Duration.ofMinutes(1);
	private static final long SEED = 42;
	private static final int EDITS_PER_FILE = 150;
	private static final int FRESH_EVERY = 10;

	/**
	 * Parses every prefix of every file of every project, letter by letter, and makes the problems of its syntax. Nothing
	 * is translated; {@link #typedPrefixesAreTranslated} does that for some.
	 *
	 * <p>To the parser a prefix is some whole elements and the beginning of one. So each prefix is parsed from the element
	 * before the one being typed, not from the head of the file; otherwise the time would grow with the square of the
	 * file.
	 */
	@Test
	void everyPrefixIsParsed() {
		IParser parser = BayStandaloneSetup.injector().getInstance(IParser.class);
		for (Path sample : Samples.all()) {
			typed(sample, (project, file, text, prefixes) -> assertTimeoutPreemptively(OF_ONE_ELEMENT, () -> {
				for (int at = prefixes.first(); at <= prefixes.last(); at++) {
					parse(parser, text.substring(prefixes.from(), at));
				}
			}, () -> "too slow: " + file + " from " + prefixes));
		}
	}

	private static void parse(IParser parser, String text) {
		IParseResult result = parser.parse(new StringReader(text));
		assertTrue(result.getRootASTElement() instanceof RuleFile, text);
		List<INode> errors = new ArrayList<>();
		result.getSyntaxErrors().forEach(errors::add);
		List<Problem> problems = SyntaxProblems.of(new SourceText("typing.bay", text), result.getRootNode(),
				SyntaxProblems.visible(result.getRootNode()), errors);
		assertTrue(errors.isEmpty() || !problems.isEmpty(), text);
		problems.forEach(problem -> check(problem, text));
	}

	/**
	 * Types files into their project, where each step is parsed, translated and checked together with all other files.
	 * The steps are
	 * <ul>
	 * <li>every prefix of every file of the tests' own projects,
	 * <li>every prefix of one file of each example project: the shortest that has a rule,
	 * <li>every prefix that ends with a line, of all other files.
	 * </ul>
	 * The elements that were whole long before stand in a file of their own, and each step reads the file from the element
	 * before the one being typed, as in {@link #everyPrefixIsParsed}.
	 */
	@Test
	void typedPrefixesAreTranslated() {
		for (Path sample : Samples.all()) {
			Optional<String> letterByLetter = Samples.isOwn(sample) ? Optional.empty() : shortestWithRule(sample);
			typed(sample, (project, file, text, prefixes) -> {
				boolean everyLetter = letterByLetter.isEmpty() || letterByLetter.get().equals(file);
				project.update("whole.bay", text.substring(0, prefixes.from()));
				for (int at = prefixes.first(); at <= prefixes.last(); at++) {
					if (everyLetter || text.charAt(at - 1) == '\n') {
						read(project, file, text.substring(prefixes.from(), at));
					}
				}
			});
		}
	}

	private static Optional<String> shortestWithRule(Path sample) {
		return Samples.texts(sample).entrySet().stream()
				.filter(entry -> Pattern.compile("^rule ", Pattern.MULTILINE).matcher(entry.getValue()).find())
				.min(Comparator.comparingInt(entry -> entry.getValue().length())).map(Map.Entry::getKey);
	}

	/**
	 * The prefixes in which one element is typed.
	 *
	 * @param from where the element before it begins
	 * @param first where the shortest prefix ends
	 * @param last where the longest prefix ends
	 */
	private record Prefixes(int from, int first, int last) {
	}

	/** Hears of the elements of a file in their order. */
	private interface Typing {
		void element(RuleProject project, String file, String text, Prefixes prefixes);
	}

	private static void typed(Path sample, Typing typing) {
		SortedMap<String, String> texts = Samples.texts(sample);
		for (Map.Entry<String, String> entry : texts.entrySet()) {
			RuleProject project = RuleProject.inMemory("typing");
			texts.forEach(project::update);
			List<Integer> starts = starts(project, entry.getKey());
			String text = entry.getValue();
			for (int element = 0; element < starts.size(); element++) {
				int end = element + 1 < starts.size() ? starts.get(element + 1) : text.length();
				typing.element(project, entry.getKey(), text,
						new Prefixes(starts.get(Math.max(0, element - 1)), starts.get(element) + 1, end));
			}
		}
	}

	/** Where the elements of a file begin; the first begins with the file. */
	private static List<Integer> starts(RuleProject project, String file) {
		List<Integer> starts = new ArrayList<>();
		RuleFile content = (RuleFile) project.resource(file).orElseThrow().getContents().get(0);
		for (Element element : content.getElements()) {
			ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
			starts.add(starts.isEmpty() ? 0 : node.getOffset());
		}
		return starts;
	}

	private static Snapshot read(RuleProject project, String file, String text) {
		Snapshot snapshot = assertTimeoutPreemptively(SOON, () -> {
			project.update(file, text);
			return project.snapshot();
		}, () -> "too slow: " + text);
		for (Problem problem : snapshot.problems()) {
			check(problem, snapshot.sources().get(problem.span().file()));
		}
		return snapshot;
	}

	private static void check(Problem problem, String text) {
		assertTrue(problem.span().offset() + problem.span().length() <= text.length(), () -> problem + " in " + text);
		assertTrue(!problem.message().isBlank() && !problem.advice().isBlank(), problem::toString);
	}

	/**
	 * Random edits, one after the other on the same project; at times the project is compared with one that reads the
	 * same texts afresh.
	 */
	@Test
	void randomEditsAreReadAndGiveWhatAFreshProjectGives() {
		Random random = new Random(SEED);
		for (Path sample : Samples.all()) {
			SortedMap<String, String> texts = Samples.texts(sample);
			RuleProject project = RuleProject.inMemory("edits");
			texts.forEach(project::update);
			for (String file : texts.keySet()) {
				for (int i = 0; i < EDITS_PER_FILE; i++) {
					String text = project.snapshot().sources().get(file);
					// starts anew at times, so that the text does not dissolve
					Snapshot now = read(project, file, edit(i % 25 == 0 ? texts.get(file) : text, project, file, random));
					if (i % FRESH_EVERY == 0) {
						RuleProject fresh = RuleProject.inMemory("edits");
						now.sources().forEach(fresh::update);
						assertEquals(fresh.snapshot().problems(), now.problems());
						assertEquals(Meaning.of(fresh.snapshot().rules()), Meaning.of(now.rules()));
						assertEquals(fresh.snapshot().dropped(), now.dropped());
					}
				}
			}
		}
	}

	private static String edit(String text, RuleProject project, String file, Random random) {
		List<ILeafNode> leaves = new ArrayList<>();
		project.resource(file).orElseThrow().getParseResult().getRootNode().getLeafNodes().forEach(leaves::add);
		int at = random.nextInt(text.length() + 1);
		ILeafNode leaf = leaves.isEmpty() ? null : leaves.get(random.nextInt(leaves.size()));
		String odd = "{}()\"'^.,:;<>=-%/*[]\u00B0\u03A9\uD83D\uDE00\u0000\t\r\n0aV";
		return switch (leaf == null ? 0 : random.nextInt(6)) {
		case 0 -> text.substring(0, at) + odd.charAt(random.nextInt(odd.length())) + text.substring(at);
		case 1 -> at == text.length() ? text : text.substring(0, at) + text.substring(at + 1);
		case 2 -> cut(text, leaf.getOffset(), leaf.getEndOffset(), "");
		case 3 -> cut(text, leaf.getEndOffset(), leaf.getEndOffset(), " " + leaf.getText());
		case 4 -> cut(text, at, Math.min(text.length(), at + random.nextInt(40)), "");
		default -> cut(text, leaf.getOffset(), leaf.getEndOffset(), leaves.get(random.nextInt(leaves.size())).getText());
		};
	}

	private static String cut(String text, int from, int to, String with) {
		int start = Math.min(from, text.length());
		return text.substring(0, start) + with + text.substring(Math.max(start, Math.min(to, text.length())));
	}

	@Test
	void theSamplesThemselvesHaveNoErrors() {
		for (Path sample : Samples.all()) {
			RuleProject project = RuleProject.unread(sample);
			Samples.texts(sample).forEach(project::update);
			assertEquals(List.of(), project.snapshot().problems().stream()
					.filter(problem -> problem.severity() == Severity.ERROR).toList(), sample.toString());
			assertEquals(List.of(), project.snapshot().dropped());
		}
	}
}
