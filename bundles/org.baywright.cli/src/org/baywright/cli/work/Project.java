package org.baywright.cli.work;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.SortedSet;

import org.baywright.analysis.Finding;
import org.baywright.analysis.Report;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * A rule project that was read and checked.
 *
 * @param prefix what to put before a file's path to get a path that the user can open
 * @param rules all of it that is whole
 * @param problems what is wrong in its texts
 * @param sources its texts by file
 * @param dropped elements that are not in the rules because of an error
 * @param report what the checks found
 * @param only the kinds of findings that it is about, sorted; all if empty
 */
public record Project(String prefix, RuleBase rules, List<Problem> problems, Map<String, String> sources,
		List<String> dropped, Report report, List<String> only) {

	/** The check whose findings say that nobody knows. */
	public static final String UNDECIDED = "undecided";

	/** Stands for every problem in the text of the files. */
	public static final String TEXT = "text";

	/** Returns the path of a file as the user can open it. */
	public String shown(String file) {
		return prefix + file;
	}

	/**
	 * Returns the same project with only the findings of some checks, and the problems if {@link #TEXT} is among them. Errors of
	 * the text stay in any case: what they leave out was not checked at all.
	 */
	public Project only(Set<String> ids) {
		Report fewer = new Report(report.findings().stream().filter(finding -> ids.contains(finding.check())).toList(),
				report.cases(), report.checks(), report.parts(), report.proved());
		List<Problem> told = ids.contains(TEXT) ? problems
				: problems.stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		SortedSet<String> shown = new TreeSet<>(ids);
		if (!told.isEmpty()) {
			shown.add(TEXT);
		}
		return new Project(prefix, rules, told, sources, dropped, fewer, List.copyOf(shown));
	}

	/** Returns how many findings and problems of a severity stand, apart from accepted ones and undecided questions. */
	public long count(Severity severity) {
		return problems.stream().filter(problem -> problem.severity() == severity).count()
				+ report.findings().stream().filter(finding -> finding.severity() == severity && stands(finding)).count();
	}

	private static boolean stands(Finding finding) {
		return finding.accepted().isEmpty() && !finding.check().equals(UNDECIDED);
	}

	/** Returns how many findings the author accepted. */
	public long accepted() {
		return report.findings().stream().filter(finding -> finding.accepted().isPresent()).count();
	}

	/** Returns how many questions were not decided. */
	public long undecided() {
		return report.findings().stream()
				.filter(finding -> finding.check().equals(UNDECIDED) && finding.accepted().isEmpty()).count();
	}
}
