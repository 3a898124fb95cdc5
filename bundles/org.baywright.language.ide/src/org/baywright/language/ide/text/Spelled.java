package org.baywright.language.ide.text;

import java.util.List;
import java.util.regex.Pattern;

import org.baywright.model.Written;

/** How names are written. */
public final class Spelled {

	private static final Pattern NAME = Pattern.compile("[\\p{L}_][\\p{L}_0-9]*");

	private Spelled() {
	}

	/** Returns whether a text without {@code ^} can be the name of something. */
	public static boolean isName(String name) {
		if (!NAME.matcher(name).matches()) {
			return false;
		}
		List<Word> words = Words.of(name);
		return words.size() == 1 && words.get(0).isWord();
	}

	/** Returns how a name is written, with {@code ^} before each of its parts that is a word of the language. */
	public static String written(String name) {
		return Written.name(name);
	}

	/** As {@link #written} for the name of a value, which may be a word such as {@code on}. */
	public static String writtenValue(String name) {
		return Written.value(name);
	}
}
