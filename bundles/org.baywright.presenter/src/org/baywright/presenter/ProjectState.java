package org.baywright.presenter;

import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Report;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;

/**
 * What screens show of a project at one moment.
 *
 * @param rules everything in it that is whole
 * @param problems what is wrong in its texts
 * @param dropped elements that are not in {@code rules} because of an error, each as {@code kind name}
 * @param report what the last check found; nothing if there was none yet
 * @param checked the rules that the report is about; {@code rules} if there is none
 * @param isCurrent whether that check saw the rules as they are now
 */
public record ProjectState(RuleBase rules, List<Problem> problems, List<String> dropped, Optional<Report> report,
		RuleBase checked, boolean isCurrent) {

	/** A project without rules that nobody has checked. */
	public static final ProjectState EMPTY = unchecked(new RuleBase.Builder("").build(), List.of(), List.of());

	public ProjectState {
		problems = List.copyOf(problems);
		dropped = List.copyOf(dropped);
	}

	/** Returns a project that nobody has checked yet. */
	public static ProjectState unchecked(RuleBase rules, List<Problem> problems, List<String> dropped) {
		return new ProjectState(rules, problems, dropped, Optional.empty(), rules, false);
	}
}
