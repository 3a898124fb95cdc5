package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.SortedMap;
import java.util.TreeMap;

/** Finds the rule files of a project. */
final class ProjectFiles {

	static final String ENDING = ".bay";

	private ProjectFiles() {
	}

	/** Returns the rule files beneath a folder by their relative path with forward slashes, in the order of the paths. */
	static SortedMap<String, Path> beneath(Path folder) throws IOException {
		SortedMap<String, Path> found = new TreeMap<>();
		Files.walkFileTree(folder, new SimpleFileVisitor<>() {
			@Override
			public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
				String name = dir.getFileName() == null ? "" : dir.getFileName().toString();
				boolean skip = !dir.equals(folder) && (name.startsWith(".") || name.equals("target"));
				return skip ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
				String name = file.getFileName().toString();
				if (name.endsWith(ENDING) && !name.startsWith(".") && !attributes.isDirectory()) {
					found.put(relative(folder, file), file);
				}
				return FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult visitFileFailed(Path file, IOException e) {
				// a folder that may not be read holds no rules for this user
				return FileVisitResult.CONTINUE;
			}
		});
		return found;
	}

	static String relative(Path folder, Path file) {
		return folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
	}
}
