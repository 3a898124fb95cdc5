package org.baywright.model;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;

/**
 * What can be said of the bytes of a picture without showing it: its type, its width and height, and whether its end is
 * there. The marks are those of PNG (ISO/IEC 15948: signature, IHDR, IEND) and JPEG (ITU-T T.81: SOI, SOF, EOI).
 *
 * @param type the media type, such as {@code image/png}
 * @param pixels how many points it has; 0 if the bytes do not say
 * @param whole whether its end is there
 */
record PictureContent(String type, long pixels, boolean whole) {

	private static final byte[] PNG = { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n' };
	private static final byte[] PNG_END = { 'I', 'E', 'N', 'D', (byte) 0xAE, 0x42, 0x60, (byte) 0x82 };
	private static final int PNG_WIDTH = 16;
	private static final int MARK = 0xFF;
	private static final int START_OF_IMAGE = 0xD8;
	private static final int END_OF_IMAGE = 0xD9;
	private static final int START_OF_SCAN = 0xDA;

	/** Returns what some bytes are; nothing if they are neither PNG nor JPEG. */
	static Optional<PictureContent> of(byte[] content) {
		if (content.length >= PNG.length && Arrays.equals(content, 0, PNG.length, PNG, 0, PNG.length)) {
			boolean whole = content.length > PNG_END.length
					&& Arrays.equals(content, content.length - PNG_END.length, content.length, PNG_END, 0, PNG_END.length);
			ByteBuffer bytes = ByteBuffer.wrap(content);
			long pixels = content.length < PNG_WIDTH + 8 ? 0 : times(bytes.getInt(PNG_WIDTH) & 0xFFFFFFFFL, bytes.getInt(PNG_WIDTH + 4) & 0xFFFFFFFFL);
			return Optional.of(new PictureContent("image/png", pixels, whole && pixels > 0));
		}
		return content.length > 3 && at(content, 0) == MARK && at(content, 1) == START_OF_IMAGE && at(content, 2) == MARK
				? Optional.of(jpeg(content)) : Optional.empty();
	}

	private static PictureContent jpeg(byte[] content) {
		long pixels = 0;
		int here = 2;
		while (here + 8 < content.length && at(content, here) == MARK && at(content, here + 1) != START_OF_SCAN) {
			int mark = at(content, here + 1);
			boolean frame = mark >= 0xC0 && mark <= 0xCF && mark != 0xC4 && mark != 0xC8 && mark != 0xCC;
			if (frame) {
				pixels = times((long) at(content, here + 5) << 8 | at(content, here + 6), (long) at(content, here + 7) << 8 | at(content, here + 8));
			}
			here += mark == MARK ? 1 : 2 + (at(content, here + 2) << 8 | at(content, here + 3));
		}
		return new PictureContent("image/jpeg", pixels, pixels > 0 && endsBehind(content, here));
	}

	/** Cameras may add bytes behind the end. */
	private static boolean endsBehind(byte[] content, int from) {
		for (int i = content.length - 2; i >= from; i--) {
			if (at(content, i) == MARK && at(content, i + 1) == END_OF_IMAGE) {
				return true;
			}
		}
		return false;
	}

	private static int at(byte[] content, int index) {
		return content[index] & 0xFF;
	}

	private static long times(long width, long height) {
		return Math.multiplyExact(Math.min(width, Integer.MAX_VALUE), Math.min(height, Integer.MAX_VALUE));
	}
}
