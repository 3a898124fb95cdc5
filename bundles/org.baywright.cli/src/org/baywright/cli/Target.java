package org.baywright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.baywright.cli.report.Output;
import org.baywright.pack.WholeFile;

/**
 * A file that the user wants to have written.
 *
 * @param session the command's session
 * @param given as the user wrote it
 */
record Target(Session session, String given) {

	/**
	 * Makes sure that the file can be written at all, before long work.
	 *
	 * @throws CommandException if its folder is not there
	 */
	Target {
		Path folder = session.resolve(given).toAbsolutePath().normalize().getParent();
		if (!isStandardOutput(given) && folder != null && !Files.isDirectory(folder)) {
			int end = given.replace('\\', '/').lastIndexOf('/');
			throw new CommandException(ExitCode.FILES, "There is no folder " + given.substring(0, Math.max(0, end))
					+ " to write " + given + " into. Make it first, or write somewhere else.");
		}
	}

	private static boolean isStandardOutput(String given) {
		return given.equals("-") || given.equals("/dev/stdout") || given.equals("/dev/fd/1") || given.equals("/proc/self/fd/1");
	}

	/** Writes the file; it is replaced as a whole or not at all. */
	void write(byte[] content) throws IOException {
		if (isStandardOutput(given)) {
			session.out().write(content);
		} else {
			WholeFile.write(session.resolve(given), content);
		}
	}

	/** Returns where to tell how it went: not into the file. */
	Output tell() {
		return isStandardOutput(given) ? session.err() : session.out();
	}
}
