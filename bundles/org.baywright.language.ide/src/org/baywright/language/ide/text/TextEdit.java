package org.baywright.language.ide.text;

import java.util.Comparator;

/**
 * A change of a text.
 *
 * @param offset characters before the change
 * @param length characters that go
 * @param text what comes in their place
 */
public record TextEdit(int offset, int length, String text) implements Comparable<TextEdit> {

	private static final Comparator<TextEdit> ORDER = Comparator.comparingInt(TextEdit::offset)
			.thenComparingInt(TextEdit::length).thenComparing(TextEdit::text);

	/** Returns a change that only adds. */
	public static TextEdit insert(int offset, String text) {
		return new TextEdit(offset, 0, text);
	}

	@Override
	public int compareTo(TextEdit other) {
		return ORDER.compare(this, other);
	}
}
