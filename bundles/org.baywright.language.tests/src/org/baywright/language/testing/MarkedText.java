package org.baywright.language.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;

/**
 * A rule text in which the expected problems are marked: below a line of rules stands a line of carets under the wrong
 * words, followed by severity, id and message, and the advice behind {@code >} if the test cares for it.
 *
 * <pre>
 * sign no_crank
 *      ^^^^^^^^ error duplicate-name: There is already a sign `no_crank` in findings.bay. > Choose another name.
 * </pre>
 *
 * The text is read together with the sample project, whose own files must stay free of problems. Every problem must be
 * marked; only {@code no-provenance} may go unmarked, so that a fixture need not repeat who wrote it.
 */
public final class MarkedText {

	private static final Pattern MARK = Pattern.compile("^(\\s*)(\\^+) (error|warning|note) (.*)$");
	private static final String FILE = "zz_fixture.bay";
	private static final String USUAL = "no-provenance";

	private final List<String> lines = new ArrayList<>();
	private final List<Mark> marks = new ArrayList<>();

	private record Mark(int line, int column, int length, String text) {

		@Override
		public String toString() {
			return line + 1 + ":" + (column + 1) + " +" + length + " " + text;
		}
	}

	private MarkedText(String fixture) {
		for (String line : fixture.split("\n", -1)) {
			Matcher mark = MARK.matcher(line);
			if (mark.matches()) {
				marks.add(new Mark(lines.size() - 1, mark.group(1).length(), mark.group(2).length(),
						mark.group(3) + " " + mark.group(4)));
			} else {
				lines.add(line);
			}
		}
	}

	/** Asserts that exactly the marked problems are found. */
	public static void check(String fixture) {
		check(fixture, Samples.tarnInMemory());
	}

	/** Asserts that exactly the marked problems are found in a text that is read together with a project. */
	public static void check(String fixture, RuleProject project) {
		MarkedText marked = new MarkedText(fixture);
		project.update(FILE, String.join("\n", marked.lines));
		marked.compare(project.snapshot());
	}

	private void compare(Snapshot snapshot) {
		boolean provenance = marks.stream().anyMatch(mark -> mark.text().contains(USUAL));
		List<Mark> found = new ArrayList<>();
		List<Problem> elsewhere = new ArrayList<>();
		for (Problem problem : snapshot.problems()) {
			if (!problem.span().file().equals(FILE)) {
				elsewhere.add(problem);
			} else if (provenance || !problem.id().equals(USUAL)) {
				found.add(mark(problem));
			}
		}
		List<Mark> expected = new ArrayList<>(marks);
		List<Mark> shown = new ArrayList<>();
		for (int i = 0; i < found.size(); i++) {
			boolean advice = i < expected.size() && expected.get(i).text().contains(" > ");
			shown.add(advice ? found.get(i) : withoutAdvice(found.get(i)));
		}
		assertEquals(render(expected), render(shown));
		assertEquals(List.of(), elsewhere, "problems in the sample project itself");
	}

	private Mark mark(Problem problem) {
		int line = problem.span().line() - 1;
		int from = problem.span().column() - 1;
		int to = problem.span().endLine() == problem.span().line() ? problem.span().endColumn() - 1
				: lines.get(line).length();
		String text = problem.severity().name().toLowerCase(Locale.ROOT) + " " + problem.id() + ": " + problem.message()
				+ " > " + problem.advice();
		return new Mark(line, from, Math.max(1, to - from), text);
	}

	private static Mark withoutAdvice(Mark mark) {
		return new Mark(mark.line(), mark.column(), mark.length(), mark.text().substring(0, mark.text().lastIndexOf(" > ")));
	}

	private String render(List<Mark> shown) {
		StringBuilder out = new StringBuilder();
		for (int i = 0; i < lines.size(); i++) {
			out.append(lines.get(i)).append('\n');
			for (Mark mark : shown) {
				if (mark.line() == i) {
					out.append(" ".repeat(mark.column())).append("^".repeat(mark.length())).append(' ').append(mark.text())
							.append('\n');
				}
			}
		}
		return out.toString();
	}
}
