package org.baywright.analysis;

import java.util.List;

import org.baywright.model.Severity;

/**
 * What an analysis found.
 *
 * @param flaws what is told of the rules, sorted by place
 * @param cases what the rules make of each finished job, in the order of the files
 * @param checks ids of the checks that were made, sorted
 * @param parts parts the rule base was cut into
 * @param proved parts that had to be proved in this run; the others were known from an earlier one
 * @param all all flaws, each where it stands, with those that are told in what the rules build on; a pack carries them
 */
public record Report(List<Flaw> flaws, List<CaseResult> cases, List<String> checks, int parts, int proved, List<Flaw> all) {

	public Report {
		flaws = List.copyOf(flaws);
		cases = List.copyOf(cases);
		checks = List.copyOf(checks);
		all = List.copyOf(all);
	}

	/** What an analysis found in rules that build on no others. */
	public Report(List<Flaw> flaws, List<CaseResult> cases, List<String> checks, int parts, int proved) {
		this(flaws, cases, checks, parts, proved, flaws);
	}

	/** Returns whether an error stands, so that no pack can be made. */
	public boolean hasErrors() {
		return all.stream().anyMatch(flaw -> flaw.severity() == Severity.ERROR);
	}

	/** Returns the breaches of the project's sign-off, for which no pack is made unless it is a draft. */
	public List<Flaw> breaches() {
		return all.stream().filter(Flaw::breach).toList();
	}

	/** Returns the warnings that nobody has accepted. */
	public List<Flaw> openWarnings() {
		return flaws.stream()
				.filter(flaw -> flaw.severity() == Severity.WARNING && flaw.accepted().isEmpty()).toList();
	}
}
