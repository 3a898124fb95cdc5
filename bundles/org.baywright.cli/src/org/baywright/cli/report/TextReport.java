package org.baywright.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Place;
import org.baywright.model.Acceptance;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/** Tells people what was found, with the lines it is about. */
public final class TextReport {

	private static final String INDENT = "      ";
	private static final int LONGEST = 2000;
	private static final int MAX_DROPPED = 5;

	private final Output out;
	private final Style style;
	private final boolean accepted;
	private final Map<String, String[]> lines = new IdentityHashMap<>();

	/**
	 * @param accepted whether to tell accepted flaws too
	 */
	public TextReport(Output out, Style style, boolean accepted) {
		this.out = out;
		this.style = style;
		this.accepted = accepted;
	}

	/** Something to tell, at its place. */
	private record Item(Span span, Severity severity, Runnable tell) {
	}

	/** Tells all problems and flaws by their place. */
	public void write(Project project) {
		List<Item> items = new ArrayList<>();
		project.problems().forEach(
				problem -> items.add(new Item(problem.span(), problem.severity(), () -> problem(project, problem))));
		Map<Object, List<Flaw>> alike = new LinkedHashMap<>();
		project.report().flaws().stream().filter(flaw -> accepted || flaw.accepted().isEmpty())
				.forEach(flaw -> alike.computeIfAbsent(whatIsAlike(flaw), key -> new ArrayList<>()).add(flaw));
		alike.values().forEach(flaws -> items
				.add(new Item(flaws.get(0).span(), flaws.get(0).severity(), () -> flaws(project, flaws))));
		items.sort(Comparator.comparing(Item::span).thenComparing(Item::severity));
		items.forEach(item -> {
			item.tell().run();
			out.println();
		});
	}

	/** Flaws that differ only in what shows them are told together. */
	private static Object whatIsAlike(Flaw flaw) {
		return List.of(flaw.check(), flaw.severity(), flaw.span(), flaw.message(), flaw.related(),
				answers(flaw.fixes()));
	}

	/** Tells only the errors: why no pack can be made. */
	public void writeErrors(Project project, List<Problem> problems, List<Flaw> flaws) {
		problems.forEach(problem -> {
			problem(project, problem);
			out.println();
		});
		flaws.forEach(flaw -> {
			flaws(project, List.of(flaw));
			out.println();
		});
	}

	/** Tells a problem in the text of a rule file. */
	public void problem(Project project, Problem problem) {
		head(project, problem.severity(), problem.span(), problem.id());
		out.println(style.strong(Style.safe(shortened(problem.message()))));
		excerpt(project, problem.span(), problem.severity());
		if (!problem.advice().isEmpty()) {
			out.println(INDENT + Style.safe(problem.advice()));
		}
	}

	private void flaws(Project project, List<Flaw> alike) {
		Flaw first = alike.get(0);
		head(project, first.severity(), first.span(), first.check());
		out.println(style.strong(Style.safe(shortened(first.message()))));
		excerpt(project, first.span(), first.severity());
		for (Place place : first.related()) {
			place(project, place);
		}
		for (Flaw flaw : alike) {
			evidence(project, flaw);
			flaw.accepted().ifPresentOrElse(this::acceptance, () -> acceptances(flaw.fixes()));
		}
		if (first.breach()) {
			out.println(INDENT + "Nobody can accept this, as the project asks for it before its rules count as agreed.");
		}
		for (Fix fix : answers(first.fixes())) {
			out.println(INDENT + "What could be done: " + Style.safe(fix.title()));
			String text = fix instanceof Fix.AddLine line ? line.line()
					: fix instanceof Fix.AddElement element ? element.text()
							: fix instanceof Fix.ReplaceText replace ? replace.now()
									: fix instanceof Fix.RewriteText rewrite ? rewrite.now() : "";
			text.lines().forEach(line -> out.println(INDENT + "  " + Style.safe(line)));
		}
	}

	private void head(Project project, Severity severity, Span span, String id) {
		String place = span.file().isEmpty() ? "" : "  " + Style.safe(project.shown(span.toString()));
		out.println(style.of(severity, severity.name()) + place + "  " + style.faint(Style.safe(id)));
	}

	private void excerpt(Project project, Span span, Severity severity) {
		lines(project, span, carets -> style.of(severity, carets));
	}

	private void lines(Project project, Span span, UnaryOperator<String> mark) {
		String text = project.sources().get(span.file());
		if (text != null) {
			// cutting a text anew for each of its flaws would cost the square of them
			String[] all = lines.computeIfAbsent(text, Excerpt::linesOf);
			Excerpt.of(all, span, style, mark).forEach(out::println);
		}
	}

	private void place(Project project, Place place) {
		out.println(INDENT + Style.safe(project.shown(place.span().toString())) + "  " + Style.safe(place.note()));
		lines(project, place.span(), style::faint);
	}

	private void evidence(Project project, Flaw flaw) {
		if (flaw.evidence() instanceof Evidence.Core core) {
			if (core.lines().size() == 1) {
				out.println(INDENT + "This line alone makes it so:");
			} else if (!core.lines().isEmpty()) {
				out.println(INDENT + "These lines together make it so; without any one of them it would not be:");
			}
			core.lines().forEach(place -> place(project, place));
		} else if (flaw.evidence() instanceof Evidence.Region) {
			list("Whenever all of this is so, whatever else:", flaw.story());
		} else if (flaw.evidence() instanceof Evidence.Witness) {
			list("For example:", flaw.story());
		}
	}

	private void list(String title, List<String> sentences) {
		if (!sentences.isEmpty()) {
			out.println(INDENT + title);
			sentences.forEach(sentence -> out.println(INDENT + "  - " + Style.safe(sentence)));
		}
	}

	private void acceptance(Acceptance acceptance) {
		out.println(INDENT + style.good("Accepted: ") + Style.safe(acceptance.reason())
				+ acceptance.author().map(author -> " – " + Style.safe(author)).orElse("")
				+ acceptance.date().map(date -> ", " + date).orElse(""));
	}

	private void acceptances(List<Fix> fixes) {
		fixes.stream().filter(TextReport::isAcceptance).forEach(fix -> out.println(
				INDENT + "To accept it with your reason: " + Style.safe(((Fix.AddElement) fix).text())));
	}

	private static List<Fix> answers(List<Fix> fixes) {
		return fixes.stream().filter(fix -> !isAcceptance(fix)).toList();
	}

	private static boolean isAcceptance(Fix fix) {
		return fix instanceof Fix.AddElement element && element.text().startsWith("accept ");
	}

	/** Tells in a few lines how the project stands. */
	public void writeTotals(Project project) {
		if (!project.dropped().isEmpty()) {
			int more = project.dropped().size() - MAX_DROPPED;
			out.println("Left out because of errors: " + Style.safe(
					String.join(", ", project.dropped().subList(0, Math.min(MAX_DROPPED, project.dropped().size()))))
					+ (more > 0 ? " and " + more + " more" : "")
					+ ". Put these right first; what depends on them is not judged until then.");
		}
		out.println(totals(project));
	}

	/** Returns in one line how the project stands. */
	public String totals(Project project) {
		long errors = project.count(Severity.ERROR);
		long warnings = project.count(Severity.WARNING);
		List<String> parts = new ArrayList<>();
		add(parts, errors, "error", Severity.ERROR);
		add(parts, warnings, "warning", Severity.WARNING);
		add(parts, project.count(Severity.NOTE), "note", Severity.NOTE);
		String kind = project.only().isEmpty() ? "" : " of kind " + String.join(" or ", project.only());
		String stands = !parts.isEmpty() ? String.join(", ", parts) + kind
				: project.rules().rules().isEmpty() ? style.of(Severity.WARNING, "There is no rule to check")
						: kind.isEmpty() ? style.good("No problems found") : "No problems" + kind + " found";
		long passed = project.report().cases().stream().filter(result -> result.passed()).count();
		int jobs = project.rules().cases().size();
		return Style.safe(project.rules().name()) + ": " + stands
				+ (project.undecided() > 0 ? ", " + project.undecided() + " undecided" : "")
				+ (project.accepted() > 0 ? ", " + project.accepted() + " accepted" : "")
				+ (kind.isEmpty() ? "" : "; other kinds are not shown") + "; "
				+ number(project.rules().rules().size(), "rule") + ", " + number(project.report().checks().size(), "check")
				+ (jobs == 0 ? "." : ", " + passed + " of " + number(jobs, "finished job") + " brought to the known end.");
	}

	private void add(List<String> parts, long count, String word, Severity severity) {
		if (count > 0) {
			parts.add(style.of(severity, number(count, word)));
		}
	}

	/** A title of a million letters is no reason to print them all. */
	private static String shortened(String message) {
		return message.length() <= LONGEST ? message : message.substring(0, LONGEST) + "\u2026";
	}

	/** Returns the number with the word in singular or plural. */
	public static String number(long count, String word) {
		return count + " " + word + (count == 1 ? "" : "s");
	}
}
