package org.baywright.language.workspace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.testing.Meaning;
import org.baywright.language.testing.Samples;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.junit.jupiter.api.Test;

/** Whatever a person types on the way to a rule file, the project gives a model and problems, and gives them soon. */
class TypingTest {

	private static final Duration SOON = Duration.ofSeconds(5);
	private static final long SEED = 42;
	private static final int EDITS_PER_FILE = 150;
	private static final int FRESH_EVERY = 10;

	/**
	 * Types every file of every sample project letter by letter: every prefix is parsed, translated and checked within
	 * the project. To the parser a prefix is some whole elements and the beginning of one. So the elements that were
	 * whole long before stand in a file of their own, and each prefix begins with the element before the one being typed;
	 * otherwise the time would grow with the square of the file.
	 */
	@Test
	void everyPrefixIsRead() {
		for (Path sample : Samples.all()) {
			SortedMap<String, String> texts = Samples.texts(sample);
			for (Map.Entry<String, String> entry : texts.entrySet()) {
				RuleProject project = RuleProject.inMemory("typing");
				texts.forEach(project::update);
				List<Integer> starts = starts(project, entry.getKey());
				String text = entry.getValue();
				for (int element = 0; element < starts.size(); element++) {
					int from = starts.get(Math.max(0, element - 1));
					int begin = element == 0 ? 0 : starts.get(element);
					int end = element + 1 < starts.size() ? starts.get(element + 1) : text.length();
					project.update("whole.bay", text.substring(0, from));
					for (int at = begin + 1; at <= end; at++) {
						read(project, entry.getKey(), text.substring(from, at));
					}
				}
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
			int length = snapshot.sources().get(problem.span().file()).length();
			assertTrue(problem.span().offset() + problem.span().length() <= length, () -> problem + " in " + text);
			assertTrue(!problem.message().isBlank() && !problem.advice().isBlank(), problem::toString);
		}
		return snapshot;
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
			RuleProject project = RuleProject.inMemory("sample");
			Samples.texts(sample).forEach(project::update);
			assertEquals(List.of(), project.snapshot().problems().stream()
					.filter(problem -> problem.severity() == Severity.ERROR).toList(), sample.toString());
			assertEquals(List.of(), project.snapshot().dropped());
		}
	}
}
