package org.baywright.language.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Place;
import org.baywright.analysis.Report;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/**
 * A rule file in which the expected flaws are marked by comments. Below a line of rules stands a comment with carets
 * under the words that are wrong, followed by severity, check and message; below it what shows the flaw:
 *
 * <pre>
 *   below : confirms battery.flat
 * //^^^^^ error contradiction: Rule a confirms battery.flat and rule b clears it in the same situation.
 * //   witness: Tarn T3 van; Engine cranks slowly; Battery voltage at rest: 12.3 V
 * //   also: line 37 (rule b, met)
 * </pre>
 *
 * A flaw that begins where the comment's slashes stand is marked {@code // (whole line)} in place of carets. Every
 * flaw must be marked, with all that shows it. The text must have no problem but notes and {@code no-provenance}, so
 * that a short text need not say who wrote it.
 */
public final class MarkedFlaws {

	private static final Pattern MARK = Pattern.compile("^//\\s*(\\^+|\\(whole line\\)) (error|warning) .*$");
	private static final Pattern SHOWN = Pattern.compile("^//   (witness|region|core|undecided|also): .*$");
	private static final String USUAL = "no-provenance";

	private final String text;
	private final Predicate<Flaw> shown;
	private final Snapshot snapshot;
	private final Report report;

	private MarkedFlaws(String file, String text, Predicate<Flaw> shown, Analysis analysis) {
		this.text = text;
		this.shown = shown;
		RuleProject project = RuleProject.unread(Samples.flawed().resolveSibling("marked")); // beside the examples, of which one may be built on
		project.update(file, text);
		snapshot = project.snapshot();
		report = analysis.check(snapshot.rules(), Listener.NONE);
	}

	/** Checks a text and asserts that exactly the marked flaws are found. */
	public static MarkedFlaws check(String text) {
		return of(text).compare();
	}

	/** As {@link #check(String)} for a text that is there for one check; what other checks find in it is left out. */
	public static MarkedFlaws check(Class<?> check, String text) {
		String id = idOf(check);
		return new MarkedFlaws("marked.bay", text, flaw -> flaw.check().equals(id), new Analysis()).compare();
	}

	/** Checks the example of a check among the product's flawed files; nothing but what is marked may be found in it. */
	public static MarkedFlaws checkFlawed(Class<?> check) {
		return flawed(idOf(check)).compare();
	}

	/** Returns the flaws of the example of a check, not compared with its marks. */
	public static MarkedFlaws flawed(String id) {
		try {
			String file = id + ".bay";
			return new MarkedFlaws(file, Files.readString(Samples.flawed().resolve(file), StandardCharsets.UTF_8),
					flaw -> true, new Analysis());
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns the flaws in a text, not compared with its marks. */
	public static MarkedFlaws of(String text) {
		return of(text, new Analysis());
	}

	/** As {@link #of(String)}, with an analysis set up otherwise. */
	public static MarkedFlaws of(String text, Analysis analysis) {
		return new MarkedFlaws("marked.bay", text, flaw -> true, analysis);
	}

	private MarkedFlaws compare() {
		assertEquals(List.of(), problems(), "problems of the text itself");
		assertEquals(text, marked());
		return this;
	}

	/** Returns what is wrong in the text itself, whatever it means. */
	public List<String> problems() {
		return snapshot.problems().stream().filter(problem -> !problem.id().equals(USUAL) && problem.severity() != Severity.NOTE)
				.map(problem -> problem.span() + " " + problem.id() + ": " + problem.message()).toList();
	}

	/** Returns the text with its marks, as they ought to be. */
	public String marked() {
		StringBuilder out = new StringBuilder();
		String[] lines = text.split("\n", -1);
		for (int i = 0; i < lines.length; i++) {
			if (!MARK.matcher(lines[i]).matches() && !SHOWN.matcher(lines[i]).matches()) {
				out.append(i == 0 ? "" : "\n").append(lines[i]);
				for (Flaw flaw : report.flaws()) {
					if (flaw.span().line() == i + 1 && flaw.accepted().isEmpty() && shown.test(flaw)) {
						out.append("\n").append(mark(flaw, lines[i]));
					}
				}
			}
		}
		return out.toString();
	}

	private static String mark(Flaw flaw, String line) {
		Span span = flaw.span();
		int from = span.column() - 1;
		int to = span.endLine() == span.line() ? span.endColumn() - 1 : line.length();
		String place = from < 2 ? "// (whole line)" : "//" + " ".repeat(from - 2) + "^".repeat(Math.max(1, to - from));
		if (from < 2) {
			assertEquals(line.length(), to, "a place that cannot be marked: " + span);
		}
		StringBuilder mark = new StringBuilder(place);
		mark.append(" ").append(flaw.severity().name().toLowerCase(Locale.ROOT)).append(" ").append(flaw.check())
				.append(": ").append(flaw.message());
		if (flaw.evidence() instanceof Evidence.Witness) {
			mark.append("\n//   witness: ").append(String.join("; ", flaw.story()));
		} else if (flaw.evidence() instanceof Evidence.Region) {
			mark.append("\n//   region: ").append(String.join("; ", flaw.story()));
		} else if (flaw.evidence() instanceof Evidence.Undecided undecided) {
			mark.append("\n//   undecided: ").append(undecided.question());
		} else if (flaw.evidence() instanceof Evidence.Core core) {
			mark.append("\n//   core: ").append(say(core.lines()));
		}
		if (!flaw.related().isEmpty()) {
			mark.append("\n//   also: ").append(say(flaw.related()));
		}
		return mark.toString();
	}

	private static String say(List<Place> places) {
		return places.stream().map(place -> "line " + place.span().line() + " (" + place.note() + ")")
				.collect(Collectors.joining(", "));
	}

	// ---- what was found ----------------------------------------------------------------------------------------

	public String text() {
		return text;
	}

	public RuleBase base() {
		return snapshot.rules();
	}

	public Report report() {
		return report;
	}

	/** Returns the flaws of one check. */
	public List<Flaw> of(Class<?> check) {
		String id = idOf(check);
		return report.flaws().stream().filter(flaw -> flaw.check().equals(id)).toList();
	}

	/** Returns the only flaw of a check. */
	public Flaw only(Class<?> check) {
		List<Flaw> found = of(check);
		assertEquals(1, found.size(), () -> "flaws of " + idOf(check) + ": " + found);
		return found.get(0);
	}

	/** Returns the ids of all flaws, in order. */
	public List<String> ids() {
		return report.flaws().stream().map(Flaw::id).toList();
	}

	private static String idOf(Class<?> check) {
		return check.getAnnotation(RuleCheck.class).id();
	}
}
