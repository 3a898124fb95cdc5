package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;

/**
 * The text of a rule file as read from its bytes.
 *
 * @param text the text; bytes that are no UTF-8 are replaced by U+FFFD
 * @param wrongAt where the first such bytes stand in the text
 */
record RuleText(String text, OptionalInt wrongAt) {

	/** More than a million rules; nobody writes such a file. */
	private static final long MAX_BYTES = 256L << 20;
	private static final int MEGABYTE = 1 << 20;
	private static final char BYTE_ORDER_MARK = '\uFEFF';

	/** A file that is larger than any rule file; the message says so, with the limit. */
	static final class TooLarge extends IOException {
		private static final long serialVersionUID = 1L;

		private TooLarge(String message) {
			super(message);
		}
	}

	static RuleText of(String text) {
		return new RuleText(text, OptionalInt.empty());
	}

	static RuleText read(Path file) throws IOException {
		if (Files.size(file) > MAX_BYTES) {
			throw new TooLarge("The file has " + Files.size(file) / MEGABYTE + " MB; a rule file may have at most "
					+ MAX_BYTES / MEGABYTE + " MB.");
		}
		return decode(Files.readAllBytes(file));
	}

	static RuleText decode(byte[] bytes) {
		CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
				.onUnmappableCharacter(CodingErrorAction.REPORT);
		CharBuffer chars = CharBuffer.allocate(bytes.length + 1);
		CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), chars, true);
		int mark = chars.position() > 0 && chars.get(0) == BYTE_ORDER_MARK ? 1 : 0;
		if (!result.isError()) {
			return of(chars.flip().toString().substring(mark));
		}
		int wrongAt = chars.position() - mark;
		return new RuleText(new String(bytes, StandardCharsets.UTF_8).substring(mark), OptionalInt.of(wrongAt));
	}
}
