package org.baywright.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;

/**
 * What a command has to do with the world around it.
 *
 * @param out where results go
 * @param err where progress and complaints go
 * @param style how results are marked
 * @param folder the folder that relative paths start from
 * @param home the folder in which Baywright lives, with its examples; the empty path if nobody said
 * @param terminal whether {@code err} is a terminal, on which progress may be shown
 * @param cancelled becomes true when the command shall stop
 */
public record Session(Output out, Output err, Style style, Path folder, Path home, boolean terminal,
		AtomicBoolean cancelled) {

	/**
	 * Returns the path that a user means.
	 *
	 * @throws CommandException if the text is no path at all
	 */
	Path resolve(String text) {
		try {
			return folder.resolve(text);
		} catch (InvalidPathException e) {
			throw new CommandException(ExitCode.USAGE, "This is no path: " + text);
		}
	}

	/** Returns where to show progress; it is shown on a terminal, or when the user asked for it. */
	Progress progress(boolean asked) {
		return terminal ? Progress.line(err, cancelled) : asked ? Progress.list(err, cancelled) : Progress.silent(cancelled);
	}
}
