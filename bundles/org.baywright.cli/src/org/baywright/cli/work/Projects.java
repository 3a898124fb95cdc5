package org.baywright.cli.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.cli.report.Project;
import org.baywright.language.workspace.LoadListener;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;

/** Reads and checks rule projects. */
public final class Projects {

	private Projects() {
	}

	/**
	 * Reads a project and makes all checks.
	 *
	 * @param path a folder with rule files, or one rule file
	 * @param given the path as the user wrote it
	 * @param progress hears of it and may stop it
	 * @throws IOException if there is nothing to read; the message is for the user
	 */
	public static Project check(Path path, String given, Progress progress) throws IOException {
		RuleProject project = open(path, given, progress);
		progress.phase("Checking " + project.name());
		Snapshot snapshot = project.snapshot();
		progress.requireWanted();
		Report report = new Analysis().check(snapshot.rules(), progress);
		boolean linked = !path.toAbsolutePath().normalize().equals(path.toRealPath());
		return new Project(project.root(), prefix(path, given), linked, snapshot.rules(), snapshot.problems(), snapshot.sources(),
				snapshot.dropped(), report, snapshot.beneath(), List.of());
	}

	/** Reads the texts of a project, by path, that lie in no folder. */
	public static Snapshot ofTexts(Map<String, String> texts) {
		RuleProject project = RuleProject.inMemory("");
		texts.forEach(project::update);
		return project.snapshot();
	}

	static RuleProject open(Path path, String given, Progress progress) throws IOException {
		progress.phase("Reading " + given);
		RuleProject project;
		try {
			project = RuleProject.open(path, new LoadListener() {
				@Override
				public void fileRead(String file, int done, int total) {
					progress.progress(done, total);
				}

				@Override
				public boolean isCancelled() {
					return progress.isCancelled();
				}
			});
		} catch (NoSuchFileException e) {
			throw new IOException("There is no file or folder " + given + ".", e);
		}
		if (project.files().isEmpty()) {
			throw new IOException(nothingIn(project, given, prefix(path, given)));
		}
		return project;
	}

	private static String nothingIn(RuleProject project, String given, String prefix) {
		List<String> passedOver = project.snapshot().problems().stream()
				.map(problem -> prefix + problem.span().file() + ": " + problem.message() + " " + problem.advice()).toList();
		return passedOver.isEmpty() ? "There are no rule files (*.bay) in " + given + "." : String.join("\n", passedOver);
	}

	static String prefix(Path path, String given) {
		String whole = given.replace('\\', '/');
		if (!Files.isDirectory(path)) {
			return whole.substring(0, whole.lastIndexOf('/') + 1);
		}
		return whole.equals(".") || whole.isEmpty() ? "" : whole.endsWith("/") ? whole : whole + "/";
	}
}
