package org.baywright.cli.work;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;

import org.baywright.model.write.RuleWriter;
import org.baywright.pack.WholeFile;

/** Writes the texts of rule files. */
public final class RuleText {

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

	/**
	 * Adds an element at the end of a file, after an empty line and with the line ends of the file, which is made with its folder
	 * if it is not there. What the file holds stays as it is.
	 *
	 * @param element makes it of what the file holds, which is the empty text for a new file
	 * @return false if something else has changed the file meanwhile; it is left as it is then
	 * @throws IOException if the file cannot be read or written, or ends inside something that is not closed
	 */
	public static boolean append(Path file, UnaryOperator<String> element) throws IOException {
		if (Files.isDirectory(file)) {
			throw new IOException(file + " is a folder, and a rule file is wanted. Give it another name; nothing was written.");
		} else if (!Files.exists(file)) {
			Files.createDirectories(file.toAbsolutePath().getParent());
			WholeFile.writeRules(file, element.apply("").getBytes(StandardCharsets.UTF_8));
			return true;
		}
		byte[] before = Files.readAllBytes(file);
		String text = new String(before, StandardCharsets.UTF_8);
		if (!RuleWriter.isWhole(text)) {
			throw new IOException(RuleWriter.notWhole(file.getFileName().toString()));
		}
		ByteArrayOutputStream now = new ByteArrayOutputStream();
		now.write(before);
		now.write(withLineEnds(text, RuleWriter.gap(text.replace("\r\n", "\n")) + element.apply(text)).getBytes(StandardCharsets.UTF_8));
		return WholeFile.replace(file, before, now.toByteArray());
	}

	/** Keeps the line ends that the author's system writes. */
	static String withLineEnds(String old, String now) {
		boolean others = old.contains("\r\n") && !old.replace("\r\n", "").contains("\n");
		return others ? now.replaceAll("\r?\n", "\r\n") : now;
	}
}
