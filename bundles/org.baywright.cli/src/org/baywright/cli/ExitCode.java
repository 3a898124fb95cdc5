package org.baywright.cli;

/** Exit codes of all commands. */
public final class ExitCode {

	/** Nothing stands in the way. */
	public static final int FINE = 0;

	/** Something was found that counts, see {@code --fail-on}; or a pack is not as it should be. */
	public static final int FLAWS = 1;

	/** The command was used in a wrong way. */
	public static final int USAGE = 2;

	/** A file could not be read or written. */
	public static final int FILES = 3;

	/** Nothing was found that counts, but a limit stopped the search before every question was answered. */
	public static final int UNDECIDED = 4;

	/** Baywright itself failed. */
	public static final int INTERNAL = 70;

	/** The command was cancelled with Ctrl+C. */
	public static final int CANCELLED = 130;

	private ExitCode() {
	}
}
