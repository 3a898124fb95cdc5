package org.baywright.cli.bench;

import java.io.IOException;

import org.baywright.presenter.bench.Keeping;

/** Where what comes of a job is written. */
public interface Desk {

	/**
	 * Writes a page.
	 *
	 * @param file the file, as the user named it
	 * @throws IOException if it cannot be written, or may not be; the message is for the user
	 */
	void page(String file, String html) throws IOException;

	/**
	 * Writes the draft of a rule.
	 *
	 * @param file the file, as the user named it
	 * @param replace whether a file that is there may be replaced
	 * @throws IOException if it cannot be written, or may not be; the message is for the user
	 */
	void draft(String file, String rule, boolean replace) throws IOException;

	/** Returns a finished job where it belongs: a project of one file has no other. */
	Keeping place(Keeping keeping);

	/** Returns whether a job belongs into a file that was read and is not there any more. */
	boolean isGone(Keeping keeping);

	/**
	 * Adds a finished job to the project.
	 *
	 * @return false if something else has changed the file meanwhile, so that nothing was written
	 * @throws IOException if it cannot be written; the message is for the user
	 */
	boolean keep(Keeping keeping) throws IOException;
}
