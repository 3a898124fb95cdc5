package org.baywright.language.ide.text;

import java.util.List;

/** Applies changes. */
public final class Edits {

	private Edits() {
	}

	/**
	 * Returns the text with all changes made.
	 *
	 * @param text the text as it is
	 * @param edits changes, each in terms of that text
	 * @throws IllegalArgumentException if two changes overlap or one lies outside of the text
	 */
	public static String apply(String text, List<TextEdit> edits) {
		StringBuilder out = new StringBuilder();
		int at = 0;
		for (TextEdit edit : edits.stream().sorted().toList()) {
			if (edit.offset() < at || edit.offset() + edit.length() > text.length()) {
				throw new IllegalArgumentException("changes overlap or lie outside of the text: " + edit);
			}
			out.append(text, at, edit.offset()).append(edit.text());
			at = edit.offset() + edit.length();
		}
		return out.append(text, at, text.length()).toString();
	}
}
