package org.baywright.presenter.draft;

import java.util.List;

/** Tells whether a folder that is to be brought in is one set of rules or several. */
public final class RuleFolders {

	private RuleFolders() {
	}

	/**
	 * Returns the folders directly beneath that hold rules, sorted; none if it is one set of rules, as a file of rules lies
	 * beside them or there is only one.
	 *
	 * @param files the rule files of the folder, relative to it, with "/" between the parts
	 */
	public static List<String> of(List<String> files) {
		List<String> folders = files.stream().filter(file -> file.contains("/")).map(file -> file.substring(0, file.indexOf('/'))).distinct()
				.sorted().toList();
		return folders.size() > 1 && files.stream().allMatch(file -> file.contains("/")) ? folders : List.of();
	}
}
