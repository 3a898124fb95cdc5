package org.baywright.presenter;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

import org.baywright.pack.WholeFile;

/** Writes what a screen shows to a file. */
public final class Export {

	private Export() {
	}

	/**
	 * Writes a text in UTF-8, aside first, so that a file that is there is replaced as a whole or not at all.
	 *
	 * @throws IOException if the file cannot be written; nothing has changed then
	 */
	public static void text(Path target, String text) throws IOException {
		WholeFile.write(target, text.getBytes(StandardCharsets.UTF_8));
	}
}
