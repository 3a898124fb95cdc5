package org.baywright.language.ide.text;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How the lines of a text end: with one sign or with two, as the system did on which it was begun. */
public final class LineEnds {

	private static final Pattern END = Pattern.compile("\r\n|\n|\r");

	private LineEnds() {
	}

	/** Returns how the first line of a text ends. */
	public static String of(String text) {
		Matcher end = END.matcher(text);
		return end.find() ? end.group() : "\n";
	}

	/** Returns what is to be added to a text with lines that end as its own do. */
	public static String asIn(String text, String added) {
		return END.matcher(added).replaceAll(of(text));
	}
}
