package org.baywright.analysis;

import java.util.List;

import org.baywright.model.Severity;

/**
 * What an analysis found.
 *
 * @param findings all findings, sorted by place
 * @param cases what the rules make of each finished job, in the order of the files
 * @param checks ids of the checks that were made, sorted
 * @param parts parts the rule base was cut into
 * @param proved parts that had to be proved in this run; the others were known from an earlier one
 */
public record Report(List<Finding> findings, List<CaseResult> cases, List<String> checks, int parts, int proved) {

	public Report {
		findings = List.copyOf(findings);
		cases = List.copyOf(cases);
		checks = List.copyOf(checks);
	}

	/** Returns whether an error stands, so that no pack can be made. */
	public boolean hasErrors() {
		return findings.stream().anyMatch(finding -> finding.severity() == Severity.ERROR);
	}

	/** Returns the warnings that nobody has accepted. */
	public List<Finding> openWarnings() {
		return findings.stream()
				.filter(finding -> finding.severity() == Severity.WARNING && finding.accepted().isEmpty()).toList();
	}
}
