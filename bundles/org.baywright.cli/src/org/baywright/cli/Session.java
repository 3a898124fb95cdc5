package org.baywright.cli;

import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;

/** What a command has to do with the world around it. */
public final class Session {

	private final Input in;
	private final Output out;
	private final Output err;
	private final Path folder;
	private final Path home;
	private final boolean terminal;
	private final AtomicBoolean cancelled;
	private Style style;
	private final Set<String> done = new LinkedHashSet<>();
	private boolean quiet;

	/**
	 * Where answers come from.
	 *
	 * @param lines the text; whoever made it closes it
	 * @param terminal whether somebody types it
	 */
	public record Input(Reader lines, boolean terminal) {
	}

	/**
	 * @param in where answers come from
	 * @param out where results go
	 * @param err where progress and complaints go
	 * @param style how results are marked, unless the user asks for something else
	 * @param folder the folder that relative paths start from
	 * @param home the folder in which Baywright lives, with its examples; the empty path if nobody said
	 * @param terminal whether {@code err} is a terminal, on which progress may be shown
	 * @param cancelled becomes true when the command shall stop
	 */
	public Session(Input in, Output out, Output err, Style style, Path folder, Path home, boolean terminal, AtomicBoolean cancelled) {
		this.in = in;
		this.out = out;
		this.err = err;
		this.style = style;
		this.folder = folder;
		this.home = home;
		this.terminal = terminal;
		this.cancelled = cancelled;
	}

	/** Returns where answers come from. */
	public Input in() {
		return in;
	}

	/** Returns where results go. */
	public Output out() {
		return out;
	}

	/** Returns where progress and complaints go. */
	public Output err() {
		return err;
	}

	/** Returns how results are marked. */
	public Style style() {
		return style;
	}

	/** Returns the folder that relative paths start from. */
	public Path folder() {
		return folder;
	}

	/** Returns the folder in which Baywright lives. */
	public Path home() {
		return home;
	}

	/** Returns what becomes true when the command shall stop. */
	public AtomicBoolean cancelled() {
		return cancelled;
	}

	/** Returns whether only results and what is wrong shall be told. */
	boolean quiet() {
		return quiet;
	}

	/** Takes over that the user wants no more told than needed. */
	void beQuiet() {
		quiet = true;
	}

	/** Takes over how the user wants results to be marked. */
	void style(Style wanted) {
		style = wanted;
	}

	/** Remembers that something was written, in a sentence: who cannot read what is told must learn it in another way. */
	void done(String sentence) {
		done.add(sentence);
	}

	/** Returns what was written, in their order. */
	String done() {
		return String.join(" ", done);
	}

	/** Tells how it went, unless the user wants it quiet. */
	void say(Output to, String text) {
		if (!quiet) {
			to.println(text);
		}
	}

	/**
	 * Returns the path that a user means.
	 *
	 * @throws CommandException if the text is no path at all
	 */
	Path resolve(String text) {
		if (text.isEmpty()) {
			throw new CommandException(ExitCode.USAGE, "An empty name names no file and no folder. The folder where you are is named by a point.");
		}
		try {
			return folder.resolve(text);
		} catch (InvalidPathException e) {
			throw new CommandException(ExitCode.USAGE, "This is no path: " + text);
		}
	}

	/** Returns a shared place that a user means: the whole path of a folder, anything else as it is. */
	String place(String text) {
		return text.contains("://") || text.matches("[^/\\\\]{2,}:.*") ? text : resolve(text).toString();
	}

	/**
	 * Returns the path of a rule pack that a user means.
	 *
	 * @throws CommandException if it is a folder
	 */
	Path pack(String text) {
		Path path = resolve(text);
		if (Files.isDirectory(path)) {
			throw new CommandException(ExitCode.USAGE,
					text + " is a folder, and a rule pack (*.baypack) is wanted. 'baywright pack " + text + "' makes one of a rule project.");
		}
		return path;
	}

	/** Returns where to show progress; it is shown on a terminal, or when the user asked for it. */
	Progress progress(boolean asked) {
		return terminal && !quiet ? Progress.line(err, cancelled)
				: asked ? Progress.list(err, cancelled) : Progress.silent(cancelled);
	}
}
