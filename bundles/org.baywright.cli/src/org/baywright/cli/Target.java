package org.baywright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;

import org.baywright.cli.report.Output;
import org.baywright.pack.WholeFile;

/** A file that the user wants to have written. */
final class Target {

	/** So many bytes tell a page or a picture from anything else. */
	private static final int KIND = 5;

	private final Session session;
	private final String given;

	/**
	 * Makes sure that the file can be written at all, before long work.
	 *
	 * @param given as the user wrote it
	 * @throws CommandException if its folder is not there
	 * @throws IOException if it may not be written, see {@link WholeFile#destination}
	 */
	Target(Session session, String given) throws IOException {
		Path folder = session.resolve(given).toAbsolutePath().normalize().getParent();
		if (!isStandardOutput(given) && folder != null && !Files.isDirectory(folder)) {
			int end = given.replace('\\', '/').lastIndexOf('/');
			throw new CommandException(ExitCode.FILES, "There is no folder " + given.substring(0, Math.max(0, end))
					+ " to write " + given + " into. Make it first, or write somewhere else.");
		}
		if (!isStandardOutput(given)) {
			WholeFile.destination(session.resolve(given));
		}
		this.session = session;
		this.given = given;
	}

	/** Returns the file that an option names, if it was given; see the constructor. */
	static Optional<Target> of(Session session, Optional<String> given) throws IOException {
		return given.isPresent() ? Optional.of(new Target(session, given.get())) : Optional.empty();
	}

	/** Returns whether both are one file, whatever the user called them. */
	boolean isSame(Target other) throws IOException {
		boolean standard = isStandardOutput(given);
		if (standard || isStandardOutput(other.given)) {
			return standard && isStandardOutput(other.given);
		}
		Path mine = WholeFile.destination(session.resolve(given));
		Path others = WholeFile.destination(session.resolve(other.given));
		boolean device = Files.exists(mine) && !Files.isRegularFile(mine);
		return mine.equals(others) && !device || Files.isRegularFile(mine) && Files.isRegularFile(others) && Files.isSameFile(mine, others);
	}

	/** Returns whether the file is one of some, whatever the user called it. */
	boolean isAmong(Collection<Path> files) throws IOException {
		Path mine = isStandardOutput(given) ? null : WholeFile.destination(session.resolve(given));
		return mine != null && Files.isRegularFile(mine) && files.contains(mine.toRealPath());
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

	/**
	 * Writes a page or a picture in the place of one of its kind, or into a new file.
	 *
	 * @throws CommandException if the file is something else, which is left as it is
	 */
	void writeLike(byte[] content) throws IOException {
		Path file = isStandardOutput(given) ? null : session.resolve(given);
		if (file != null && Files.isRegularFile(file) && Files.size(file) > 0) {
			int length = Math.min(KIND, content.length);
			try (InputStream present = Files.newInputStream(file)) {
				if (!Arrays.equals(present.readNBytes(length), Arrays.copyOf(content, length))) {
					throw new CommandException(ExitCode.FILES, "There is already a file " + given + ", and it is something else. Name another one; nothing was written.");
				}
			}
		}
		write(content);
	}

	/** Returns the file as the user wrote it. */
	String given() {
		return given;
	}

	/** Returns where to tell how it went: not into the file. */
	Output tell() {
		return isStandardOutput(given) ? session.err() : session.out();
	}
}
