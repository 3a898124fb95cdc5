package org.baywright.language.ide.text;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** How names are written. */
public final class Spelled {

	private static final Pattern NAME = Pattern.compile("[\\p{L}_][\\p{L}_0-9]*");

	/** Words of the language that are names all the same where a name stands. */
	private static final Set<String> FREE = Set.of("base", "cost", "skill", "basic", "trained", "raw", "dtc", "step", "sub",
			"steps", "part", "tool", "state", "what", "practice", "jobs", "memory");

	private static final Set<String> FREE_VALUES = Set.of("on", "clear", "set", "read");

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
		int point = name.indexOf('.');
		return point < 0 ? escaped(name, false)
				: escaped(name.substring(0, point), false) + "." + written(name.substring(point + 1));
	}

	/** As {@link #written} for the name of a value, which may be a word such as {@code on}. */
	public static String writtenValue(String name) {
		return escaped(name, true);
	}

	private static String escaped(String name, boolean value) {
		List<Word> words = Words.of(name);
		boolean word = words.size() == 1 && words.get(0).kind() == Word.Kind.KEYWORD && !FREE.contains(name)
				&& !(value && FREE_VALUES.contains(name));
		return word ? "^" + name : name;
	}
}
