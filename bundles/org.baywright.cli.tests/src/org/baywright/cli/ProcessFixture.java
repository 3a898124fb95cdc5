package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A folder with two projects, and the command as a process in it. */
abstract class ProcessFixture {

	@TempDir
	Path folder;

	@BeforeEach
	void copyProjects() throws IOException {
		folder = folder.toRealPath();
		TestFiles.copy(TestFiles.own("projects/van"), folder.resolve("van"));
		TestFiles.copy(TestFiles.own("projects/flawed"), folder.resolve("flawed"));
	}

	final Runs.Result run(String... args) throws IOException, InterruptedException {
		return new Command(folder).run(args);
	}

	static void assertHas(String text, String part) {
		assertTrue(text.contains(part), part + " is not in:\n" + text);
	}
}
