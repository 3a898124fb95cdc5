package org.baywright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Finds the files of the tests, from the working directory upwards. */
public final class TestFiles {

	private static final String OWN = "bundles/org.baywright.cli.tests";

	private TestFiles() {
	}

	/** Returns the root of the source tree. */
	public static Path root() {
		for (Path folder = Path.of("").toAbsolutePath(); folder != null; folder = folder.getParent()) {
			if (Files.isDirectory(folder.resolve(OWN))) {
				return folder;
			}
		}
		throw new AssertionError("the tests must run in the source tree");
	}

	/** Returns a file or folder of these tests. */
	public static Path own(String path) {
		return root().resolve(OWN).resolve(path);
	}

	/** Copies a folder with all that is in it. */
	static void copy(Path from, Path to) {
		try (Stream<Path> all = Files.walk(from)) {
			for (Path path : all.toList()) {
				Files.copy(path, to.resolve(from.relativize(path).toString()));
			}
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}
}
