package org.baywright.cli.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.baywright.pack.WholeFile;

/** Writes the texts of rule files. */
final class RuleText {

	private static final String BYTE_ORDER_MARK = "\uFEFF";

	private RuleText() {
	}

	/**
	 * Gives a file a new text, unless it does not hold the old one any more. A byte order mark stays.
	 *
	 * @return whether it was written
	 * @throws IOException if the file cannot be read or written
	 */
	static boolean replace(Path file, String old, String now) throws IOException {
		byte[] before = Files.readAllBytes(file);
		String text = new String(before, StandardCharsets.UTF_8);
		String mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
		return text.equals(mark + old) && WholeFile.replace(file, before, (mark + now).getBytes(StandardCharsets.UTF_8));
	}
}
