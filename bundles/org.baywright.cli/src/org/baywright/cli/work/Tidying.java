package org.baywright.cli.work;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

import org.baywright.language.formatting2.Formatting;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.WholeFile;

/**
 * Lays out rule files.
 *
 * @param prefix what to put before a file's path to get a path that the user can open
 * @param changed files whose layout was, or would be, changed, with their text as it is then
 * @param refused what is wrong in files that cannot be laid out
 * @param sources the texts by file
 * @param files how many files there are
 */
public record Tidying(String prefix, Map<String, String> changed, List<Problem> refused, Map<String, String> sources, int files) {

	private static final Set<ProblemKind> UNREADABLE = EnumSet.of(ProblemKind.UNREADABLE_FILE, ProblemKind.UNREADABLE_FOLDER);

	/**
	 * Lays out all files of a project.
	 *
	 * @param path a folder with rule files, or one rule file
	 * @param given the path as the user wrote it
	 * @param write whether to write what changes
	 * @param progress hears of it and may stop it between two files
	 * @throws IOException if a file cannot be read or written; the message is for the user
	 */
	public static Tidying of(Path path, String given, boolean write, Progress progress) throws IOException {
		RuleProject project = Projects.open(path, given, progress);
		Snapshot snapshot = project.snapshot();
		Map<String, String> changed = new TreeMap<>();
		List<Problem> refused = new ArrayList<>();
		progress.phase("Tidying " + project.name());
		int done = 0;
		for (String file : project.files()) {
			progress.requireWanted();
			String text = snapshot.sources().get(file);
			Optional<String> tidy = isText(snapshot, file) ? tidy(project, file, text) : Optional.empty();
			if (tidy.isEmpty()) {
				snapshot.problems().stream()
						.filter(problem -> problem.span().file().equals(file) && problem.severity() == Severity.ERROR).findFirst()
						.ifPresent(refused::add);
			} else if (!tidy.get().equals(text)) {
				String laidOut = RuleText.withLineEnds(text, tidy.get());
				if (laidOut.equals(text)) {
					continue;
				}
				if (!write) {
					changed.put(file, laidOut);
				} else if (RuleText.replace(project.root().orElseThrow().resolve(file), text, laidOut)) {
					changed.put(file, laidOut);
				} else {
					refused.add(new Problem(ProblemKind.CHANGED_MEANWHILE, new Span(file, 1, 1, 1, 1, 0, 0),
							"The file was changed by somebody else meanwhile, and was left as it is.", "Lay it out again."));
				}
			}
			progress.progress(++done, project.files().size());
		}
		if (write) {
			project.files().stream().map(file -> project.root().orElseThrow().resolve(file).getParent()).distinct().forEach(WholeFile::sweep);
		}
		snapshot.problems().stream().filter(problem -> UNREADABLE.contains(problem.kind())).forEach(refused::add);
		return new Tidying(Projects.prefix(path, given), changed, refused, snapshot.sources(), project.files().size());
	}

	/** Bytes that are no text would be lost if the file were written again. */
	private static boolean isText(Snapshot snapshot, String file) {
		return snapshot.problems().stream()
				.noneMatch(problem -> problem.kind() == ProblemKind.NOT_UTF8 && problem.span().file().equals(file));
	}

	private static Optional<String> tidy(RuleProject project, String file, String text) {
		synchronized (project) {
			Optional<String> tidy = project.resource(file)
					.flatMap(resource -> project.services().getInstance(Formatting.class).format(resource));
			if (tidy.isPresent() && !withoutSpace(tidy.get()).equals(withoutSpace(text))) {
				throw new IllegalStateException("the layout of " + file + " would change more than space");
			}
			return tidy;
		}
	}

	private static String withoutSpace(String text) {
		return text.replaceAll("\\s+", "");
	}
}
