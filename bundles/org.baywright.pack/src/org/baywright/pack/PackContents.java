package org.baywright.pack;

import java.util.List;

import org.baywright.analysis.Finding;
import org.baywright.analysis.Report;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * What goes into a pack.
 *
 * @param rules the rule base
 * @param report what the analysis of just this rule base found
 * @param problems what the language remarked on its text
 * @param tool version of Baywright, see {@link ToolVersion}
 */
public record PackContents(RuleBase rules, Report report, List<Problem> problems, String tool) {

	public PackContents {
		problems = List.copyOf(problems);
	}

	/**
	 * Makes sure that no error stands.
	 *
	 * @throws PackRefused if one does; it names all of them
	 */
	public void requireNoErrors() throws PackRefused {
		List<Problem> wrong = problems.stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		List<Finding> proved = report.findings().stream().filter(finding -> finding.severity() == Severity.ERROR).toList();
		if (!wrong.isEmpty() || !proved.isEmpty()) {
			throw new PackRefused(wrong, proved);
		}
	}
}
