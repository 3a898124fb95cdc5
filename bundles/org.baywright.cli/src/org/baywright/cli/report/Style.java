package org.baywright.cli.report;

import org.baywright.model.Severity;
import org.baywright.model.words.Invisible;

/** Marks parts of a text by colours, or not at all. Whatever comes from a file is freed of control characters. */
public enum Style {
	/** No colours. */
	PLAIN,
	/** The escape sequences of ECMA-48, which terminals understand. */
	COLOURED;

	/** Returns the text in bold. */
	public String strong(String text) {
		return mark("1", text);
	}

	/** Returns the text less visible. */
	public String faint(String text) {
		return mark("2", text);
	}

	/** Returns the text in the colour of something good. */
	public String good(String text) {
		return mark("32", text);
	}

	/** Returns the text in the colour of the severity. */
	public String of(Severity severity, String text) {
		return mark(switch (severity) {
		case ERROR -> "1;31";
		case WARNING -> "1;33";
		case NOTE -> "1;36";
		}, text);
	}

	private String mark(String code, String text) {
		return this == PLAIN || text.isEmpty() ? text : "\u001B[" + code + "m" + text + "\u001B[0m";
	}

	/** Returns the text with every character replaced that does not show, but the tab and what joins letters, so that it
	 * cannot command a terminal nor make a rule look like another one. */
	public static String safe(String text) {
		StringBuilder safe = new StringBuilder(text.length());
		text.codePoints().map(c -> c != '\t' && Invisible.is(c) && !Invisible.isJoining(c) ? Invisible.LOST : c)
				.forEach(safe::appendCodePoint);
		return safe.toString();
	}
}
