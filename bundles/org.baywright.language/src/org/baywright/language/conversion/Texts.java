package org.baywright.language.conversion;

import org.baywright.model.Written;

/** Texts in quotes and names that would otherwise be words of the language. */
public final class Texts {

	private Texts() {
	}

	/**
	 * Returns what a text in quotes says. {@code \"} is a quote, {@code \\} a backslash, {@code \n} a new line; any
	 * other backslash stands for itself, so that nobody stumbles over one.
	 */
	public static String unquote(String quoted) {
		String inner = quoted.length() >= 2 ? quoted.substring(1, quoted.length() - 1) : "";
		if (inner.indexOf('\\') < 0) {
			return inner;
		}
		StringBuilder out = new StringBuilder(inner.length());
		for (int i = 0; i < inner.length(); i++) {
			char c = inner.charAt(i);
			char next = i + 1 < inner.length() ? inner.charAt(i + 1) : 0;
			if (c == '\\' && (next == '"' || next == '\\' || next == 'n')) {
				out.append(next == 'n' ? '\n' : next);
				i++;
			} else {
				out.append(c);
			}
		}
		return out.toString();
	}

	/** Returns the text in quotes; {@link #unquote} is its inverse. */
	public static String quote(String text) {
		return Written.text(text);
	}

	/** Returns a name without the {@code ^} by which a word of the language is made a name. */
	public static String plainName(String written) {
		return written.indexOf('^') < 0 ? written : written.replace("^", "");
	}
}
