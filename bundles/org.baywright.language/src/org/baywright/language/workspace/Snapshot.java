package org.baywright.language.workspace;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * A project as it was at one moment.
 *
 * @param version grows with each change of the project
 * @param rules everything in it that is whole
 * @param problems what is wrong in the texts, by file and place
 * @param sources the text of each file by its path relative to the project
 * @param dropped elements that are not in {@code rules} because of an error, each as {@code kind name}
 */
public record Snapshot(long version, RuleBase rules, List<Problem> problems, SortedMap<String, String> sources,
		List<String> dropped) {

	public Snapshot {
		problems = List.copyOf(problems);
		sources = Collections.unmodifiableSortedMap(new TreeMap<>(sources));
		dropped = List.copyOf(dropped);
	}

	/** Returns whether any problem is an error; a pack cannot be made then. */
	public boolean hasErrors() {
		return problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
	}
}
