package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;

/**
 * The rule files of a project.
 *
 * @param files the files by their relative path with forward slashes, in the order of the paths
 * @param passedOver what is wrong with files and folders that are not among them, by relative path
 */
record ProjectFiles(SortedMap<String, Path> files, SortedMap<String, Problem> passedOver) {

	private static final String ENDING = ".bay";

	/** A folder that holds more than one was willing to look at. */
	static final class TooMany extends IOException {
		private static final long serialVersionUID = 1L;
	}

	/** Returns the rule files beneath a folder, which may be named by a link. */
	static ProjectFiles beneath(Path given) throws IOException {
		return beneath(given, Integer.MAX_VALUE);
	}

	/**
	 * As {@link #beneath(Path)}, for a folder of which nobody has said that it is one of rules.
	 *
	 * @param most how many files and folders to look at
	 * @throws TooMany if there are more
	 */
	static ProjectFiles beneath(Path given, int most) throws IOException {
		Path folder = given.toRealPath();
		ProjectFiles found = new ProjectFiles(new TreeMap<>(), new TreeMap<>());
		Files.walkFileTree(folder, new SimpleFileVisitor<>() {
			private int seen;

			private void count() throws IOException {
				if (++seen > most) {
					throw new TooMany();
				}
			}

			@Override
			public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) throws IOException {
				count();
				return !dir.equals(folder) && isSkipped(dir) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
				count();
				if (isRules(file.getFileName().toString())) {
					found.add(relative(folder, file), given.resolve(folder.relativize(file)));
				}
				return FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
				if (file.equals(folder)) {
					throw e;
				}
				boolean isFolder = Files.isDirectory(file);
				if (isFolder && !isSkipped(file) || isRules(file.getFileName().toString())) {
					String path = relative(folder, file);
					found.passedOver.put(path, unreadable(path, isFolder));
				}
				return FileVisitResult.CONTINUE;
			}
		});
		return found;
	}

	/** Returns whether a file of this relative path belongs to a project. */
	static boolean isOne(String path) {
		String[] names = path.split("/");
		int folders = names.length - 1;
		return Arrays.stream(names, 0, folders).noneMatch(ProjectFiles::isSkipped) && isRules(names[folders]);
	}

	/** Some systems write file names in capitals. */
	private static boolean isRules(String name) {
		return hasEnding(name) && !name.startsWith(".");
	}

	static boolean hasEnding(String name) {
		return name.toLowerCase(Locale.ROOT).endsWith(ENDING);
	}

	private static boolean isSkipped(Path folder) {
		return isSkipped(folder.getFileName().toString());
	}

	private static boolean isSkipped(String folder) {
		return folder.startsWith(".") || folder.equals("target");
	}

	private void add(String path, Path file) {
		if (Files.isRegularFile(file) || !Files.exists(file)) {
			files.put(path, file);
		} else if (!Files.isDirectory(file)) {
			passedOver.put(path, new Problem(ProblemKind.FILE_PASSED_OVER, start(path),
					"It is a pipe or a device, not a rule file, and was passed over.", "Take it out of the project, or rename it."));
		}
	}

	/** Returns the problem of a file or folder that is there and cannot be read. */
	private static Problem unreadable(String path, boolean isFolder) {
		return new Problem(isFolder ? ProblemKind.UNREADABLE_FOLDER : ProblemKind.UNREADABLE_FILE, start(path),
				"The " + (isFolder ? "folder" : "file") + " cannot be read.", "Check whether it is there and whether you may read it.");
	}

	/** Returns the problem of a rule file that could not be read for the given reason. */
	static Problem unreadable(String path, IOException reason) {
		return reason instanceof RuleText.TooLarge ? new Problem(ProblemKind.UNREADABLE_FILE, start(path), reason.getMessage(),
				"Split it into several files; if it holds no rules, take it out of the project.") : unreadable(path, false);
	}

	private static Span start(String path) {
		return new Span(path, 1, 1, 1, 1, 0, 0);
	}

	static String relative(Path folder, Path file) {
		return folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
	}
}
