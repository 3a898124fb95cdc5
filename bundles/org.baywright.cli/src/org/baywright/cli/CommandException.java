package org.baywright.cli;

/** Ends a command with a sentence for its user. */
public final class CommandException extends RuntimeException {

	private static final long serialVersionUID = 1L;

	private final int exitCode;

	/**
	 * @param exitCode one of {@link ExitCode}
	 * @param message what is wrong and what to do
	 */
	public CommandException(int exitCode, String message) {
		super(message);
		this.exitCode = exitCode;
	}

	int exitCode() {
		return exitCode;
	}
}
