package org.baywright.cli.report;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * A rule project that was read and checked.
 *
 * @param folder the folder that it was read from
 * @param prefix what to put before a file's path to get a path that the user can open
 * @param linked whether the user named it by a link, so that the way out of it is another than it seems
 * @param rules all of it that is whole
 * @param problems what is wrong in its texts
 * @param sources its texts by file
 * @param dropped elements that are not in the rules because of an error
 * @param report what the checks found
 * @param beneath the folders and rule packs that it builds on, each as it was when it was read
 * @param only the kinds of flaws that it is about, sorted; all if empty
 */
public record Project(Optional<Path> folder, String prefix, boolean linked, RuleBase rules, List<Problem> problems, Map<String, String> sources,
		List<String> dropped, Report report, SortedMap<Path, String> beneath, List<String> only) {

	/** The check whose flaws say that nobody knows. */
	public static final String UNDECIDED = "undecided";

	/** Stands for every problem in the text of the files. */
	public static final String TEXT = "text";

	/** Returns the path of a file as the user can open it. */
	public String shown(String file) {
		if (!file.startsWith("../") || linked) {
			return prefix + file;
		}
		Deque<String> names = new ArrayDeque<>();
		for (String name : (prefix + file).split("/")) {
			boolean up = name.equals("..") && !names.isEmpty() && !names.getLast().equals("..") && !names.getLast().isEmpty();
			if (up) {
				names.removeLast();
			} else if (!name.equals(".")) {
				names.add(name);
			}
		}
		return String.join("/", names);
	}

	/**
	 * Returns the same project with only the flaws of some checks, and the problems if {@link #TEXT} is among them. Errors of
	 * the text stay in any case: what they leave out was not checked at all.
	 */
	public Project only(Set<String> ids) {
		Report fewer = new Report(report.flaws().stream().filter(flaw -> ids.contains(flaw.check())).toList(),
				report.cases(), report.checks(), report.parts(), report.proved(), report.all());
		List<Problem> told = ids.contains(TEXT) ? problems
				: problems.stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		SortedSet<String> shown = new TreeSet<>(ids);
		if (!told.isEmpty()) {
			shown.add(TEXT);
		}
		return new Project(folder, prefix, linked, rules, told, sources, dropped, fewer, beneath, List.copyOf(shown));
	}

	/** Returns how many flaws and problems of a severity stand, apart from accepted ones and undecided questions. */
	public long count(Severity severity) {
		return problems.stream().filter(problem -> problem.severity() == severity).count()
				+ report.flaws().stream().filter(flaw -> flaw.severity() == severity && stands(flaw)).count();
	}

	private static boolean stands(Flaw flaw) {
		return flaw.accepted().isEmpty() && !flaw.check().equals(UNDECIDED);
	}

	/** Returns how many flaws the author accepted. */
	public long accepted() {
		return report.flaws().stream().filter(flaw -> flaw.accepted().isPresent()).count();
	}

	/** Returns how many breaches of the project's sign-off stand. */
	public long breaches() {
		return report.flaws().stream().filter(Flaw::breach).count();
	}

	/** Returns how many questions were not decided. */
	public long undecided() {
		return report.flaws().stream()
				.filter(flaw -> flaw.check().equals(UNDECIDED) && flaw.accepted().isEmpty()).count();
	}
}
