package org.baywright.pack;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.model.Picture;
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
 * @param pictures the content of each picture that the rules show, by its path in the project
 * @param draft whether it may be made although the sign-off is not met
 */
public record PackContents(RuleBase rules, Report report, List<Problem> problems, String tool, SortedMap<String, byte[]> pictures, boolean draft) {

	/** What goes into a pack that is no draft. */
	public PackContents(RuleBase rules, Report report, List<Problem> problems, String tool, SortedMap<String, byte[]> pictures) {
		this(rules, report, problems, tool, pictures, false);
	}

	/** Rules that show no pictures. */
	public PackContents(RuleBase rules, Report report, List<Problem> problems, String tool) {
		this(rules, report, problems, tool, new TreeMap<>());
	}

	/** Pictures of what a project builds on stay there. */
	public PackContents {
		rules = Picture.without(rules, picture -> picture.span().isElsewhere());
		problems = List.copyOf(problems);
		pictures = Collections.unmodifiableSortedMap(new TreeMap<>(pictures));
	}

	/**
	 * Makes sure that no error stands, and that the sign-off is met if the pack is to be no draft.
	 *
	 * @throws PackRefused if it is not so; it names all that blocks
	 */
	public void requireNothingBlocks() throws PackRefused {
		List<Problem> wrong = problems.stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		List<Flaw> proved = report.all().stream().filter(flaw -> flaw.severity() == Severity.ERROR).toList();
		if (!wrong.isEmpty() || !proved.isEmpty()) {
			throw PackRefused.forErrors(wrong, proved);
		}
		if (!draft && !report.breaches().isEmpty()) {
			throw PackRefused.forBreaches(report.breaches());
		}
	}
}
