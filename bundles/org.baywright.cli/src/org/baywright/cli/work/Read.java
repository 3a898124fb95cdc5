package org.baywright.cli.work;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;

/**
 * A rule project that was read and not checked.
 *
 * @param folder the folder that its files lie in
 * @param files its files, relative to the folder with forward slashes
 * @param rules all of it that is whole
 * @param problems what is wrong in its texts
 */
public record Read(Path folder, List<String> files, RuleBase rules, List<Problem> problems) {

	/**
	 * Reads a project.
	 *
	 * @param path a folder with rule files, or one rule file
	 * @param given the path as the user wrote it
	 * @param progress hears of it and may stop it
	 * @throws IOException if there is nothing to read; the message is for the user
	 */
	public static Read of(Path path, String given, Progress progress) throws IOException {
		RuleProject project = Projects.open(path, given, progress);
		Snapshot snapshot = project.snapshot();
		progress.requireWanted();
		return new Read(project.root().orElseThrow(), project.files(), snapshot.rules(), snapshot.problems());
	}
}
