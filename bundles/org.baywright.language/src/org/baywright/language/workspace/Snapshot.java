package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/**
 * A project as it was at one moment.
 *
 * @param version grows with each change of the project
 * @param rules everything in it that is whole
 * @param problems what is wrong in the texts, by file and place
 * @param sources the text of each file by its path relative to the project, also of those that it builds on
 * @param dropped elements that are not in {@code rules} because of an error, each as {@code kind name}
 * @param beneath the folders and rule packs that it builds on, each as it was on the disk; see {@link FileStamps#ofBuiltOn}
 */
public record Snapshot(long version, RuleBase rules, List<Problem> problems, SortedMap<String, String> sources,
		List<String> dropped, SortedMap<Path, String> beneath) {

	public Snapshot {
		problems = List.copyOf(problems);
		sources = Collections.unmodifiableSortedMap(new TreeMap<>(sources));
		dropped = List.copyOf(dropped);
		beneath = Collections.unmodifiableSortedMap(new TreeMap<>(beneath));
	}

	/** Returns the texts that its author can change, by their path relative to the project. */
	public SortedMap<String, String> ownSources() {
		SortedMap<String, String> own = new TreeMap<>(sources);
		own.keySet().removeIf(Span::isElsewhere);
		return own;
	}

	/** Returns whether anything that it builds on is another on the disk now. Reads names, sizes and times only. */
	public boolean isChangedBeneath() {
		return beneath.entrySet().stream().anyMatch(entry -> !FileStamps.ofBuiltOn(entry.getKey()).equals(entry.getValue()));
	}

	/** Returns whether the project builds on a file, whatever it is called. */
	public boolean isBuiltOn(Path file) {
		try {
			return beneath.containsKey(file.toRealPath());
		} catch (IOException e) {
			return false; // it is not there
		}
	}

	/** Returns whether any problem is an error; a pack cannot be made then. */
	public boolean hasErrors() {
		return problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
	}
}
