package org.baywright.presenter.flaws;

import java.util.ArrayList;
import java.util.List;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.Say;

/** Says in one or two sentences how the rules stand; never that all is well when something was not looked at. */
record Headline(String text, Tone tone) {

	private static final String UNDECIDED = "undecided";
	private static final int MAX_DROPPED = 5;

	static Headline of(ProjectState state) {
		if (state.rules().rules().isEmpty() && state.problems().isEmpty()) {
			return new Headline("There are no rules yet.", Tone.UNKNOWN);
		}
		if (state.report().isEmpty()) {
			long wrong = problems(state, Severity.ERROR);
			String text = state.problems().isEmpty() ? "" : " " + Say.upper(counts(state, List.of())) + " in the text.";
			return new Headline("The rules have not been checked yet." + text, wrong > 0 ? Tone.WRONG : Tone.UNKNOWN);
		}
		Report report = state.report().get();
		List<Flaw> open = report.flaws().stream().filter(flaw -> flaw.accepted().isEmpty()).toList();
		List<Flaw> known = open.stream().filter(flaw -> !flaw.check().equals(UNDECIDED)).toList();
		int undecided = open.size() - known.size();
		List<String> sentences = new ArrayList<>();
		if (!state.isCurrent()) {
			sentences.add("The rules have changed since this check.");
		}
		String found = counts(state, known);
		// the result first: where there is little room the rest is cut off
		sentences.add(Say.upper(found.isEmpty() ? "nothing found" : found) + accepted(report.flaws().size() - open.size()) + "; "
				+ Say.count(report.checks().size(), "kind") + " of checks made on " + Say.count(state.rules().rules().size(), "rule") + ".");
		if (undecided > 0) {
			sentences.add(Say.upper(Say.count(undecided, "question was", "questions were"))
					+ " not decided, because the search reached its limit.");
		}
		if (!state.dropped().isEmpty()) {
			sentences.add(dropped(state.dropped()));
		}
		return new Headline(String.join(" ", sentences), tone(state, known, undecided));
	}

	private static Tone tone(ProjectState state, List<Flaw> known, int undecided) {
		if (problems(state, Severity.ERROR) > 0 || flaws(known, Severity.ERROR) > 0) {
			return Tone.WRONG;
		} else if (!state.isCurrent() || undecided > 0 || !state.dropped().isEmpty()) {
			return Tone.UNKNOWN;
		}
		return known.isEmpty() && state.problems().isEmpty() ? Tone.GOOD : Tone.WARNED;
	}

	private static long problems(ProjectState state, Severity severity) {
		return state.problems().stream().filter(problem -> problem.severity() == severity).count();
	}

	private static long flaws(List<Flaw> flaws, Severity severity) {
		return flaws.stream().filter(flaw -> flaw.severity() == severity).count();
	}

	private static String counts(ProjectState state, List<Flaw> known) {
		List<String> parts = new ArrayList<>();
		for (Severity severity : Severity.values()) {
			long count = problems(state, severity) + flaws(known, severity);
			if (count > 0) {
				parts.add(Say.count(count, Say.lower(severity)));
			}
		}
		return Words.and(parts);
	}

	private static String accepted(int count) {
		return count == 0 ? "" : ", " + Say.count(count, "warning") + " accepted";
	}

	private static String dropped(List<String> elements) {
		List<String> first = elements.subList(0, Math.min(MAX_DROPPED, elements.size()));
		int more = elements.size() - first.size();
		return "Left out of the check because of an error: " + String.join(", ", first)
				+ (more > 0 ? " and " + more + " more" : "") + ".";
	}
}
