package org.baywright.model;

import java.util.Set;

/** How names and texts are written in a text of rules: a word of the language is a name only behind {@code ^}. */
public final class Written {

	/** Words of the language that are no names anywhere; the grammar's own list is held against it by a test. */
	private static final Set<String> RESERVED = Set.of(
			"above", "absent", "accept", "agrees", "and", "answers", "any", "at", "at_least", "at_most",
			"because", "below", "builds_on", "by", "came_back", "caution", "changes_for_good", "check_digit", "cleared", "clears",
			"code", "confirmed", "confirms", "cycle", "disturbs", "do_not_drive", "do_not_start", "every", "except", "exclusive", "expect",
			"family", "fault", "fits", "fixes", "fmi", "for", "found", "given", "hazard", "hazards", "in",
			"intermittent", "is", "j1939", "job", "law", "licensed", "like", "make_safe", "meaning", "measures", "met",
			"missing", "module", "needs", "never", "not", "not_by", "nothing", "objects", "of", "or", "otherwise",
			"prepare", "present", "proves", "published", "reference", "referred", "refers", "repair", "repeat",
			"results", "review", "rule", "run", "seen", "seen_with", "sign", "sign_off", "silent", "source", "spn", "suspected",
			"suspects", "takes", "tell_customer", "test", "then", "trait", "unexplained", "unread", "verify",
			"vin", "wait", "was", "when", "where", "with");

	/** Words that may be values, but not names. */
	private static final Set<String> VALUES = Set.of("on", "clear", "set", "read");

	private Written() {
	}

	/** Returns how a name is written, with {@code ^} before each of its parts that is a word of the language. */
	public static String name(String name) {
		int point = name.indexOf('.');
		return point < 0 ? escaped(name, RESERVED.contains(name) || VALUES.contains(name))
				: name(name.substring(0, point)) + "." + name(name.substring(point + 1));
	}

	/** As {@link #name} for the name of a value, which may be a word such as {@code on}. */
	public static String value(String name) {
		return escaped(name, RESERVED.contains(name));
	}

	/** Returns a text as it stands in quotes: on one line, with a backslash before quotes and backslashes. */
	public static String text(String text) {
		StringBuilder out = new StringBuilder(text.length() + 2).append('"');
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			switch (c) {
			case '"', '\\' -> out.append('\\').append(c);
			case '\n' -> out.append("\\n");
			case '\r' -> {
				// a line ends with one character here
			}
			default -> out.append(c);
			}
		}
		return out.append('"').toString();
	}

	private static String escaped(String name, boolean reserved) {
		return reserved ? "^" + name : name;
	}
}
