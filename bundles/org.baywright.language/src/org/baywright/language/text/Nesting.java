package org.baywright.language.text;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalInt;

/**
 * Keeps from the parser what is nested deeper than any rule: it would end the parser instead of being read.
 *
 * @param text the text with as many characters; brackets and the word {@code not} beyond the limit are written over by
 *             something that is no rule, so that the parser reports them and goes on
 * @param tooDeepAt where the first of them stands
 */
public record Nesting(String text, OptionalInt tooDeepAt) {

	/** Brackets and the word {@code not}, one within another. A rule that people understand has three. */
	public static final int MOST = 100;

	private static final char NO_RULE = '\u00A7';

	/** Looks through a text, passing over quoted texts and comments. */
	public static Nesting of(String text) {
		if (text.length() <= MOST) {
			return new Nesting(text, OptionalInt.empty());
		}
		StringBuilder out = null;
		int first = -1;
		Deque<Integer> nots = new ArrayDeque<>();
		int depth = 0;
		int not = 0;
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			int end = endOfSilent(text, i);
			boolean deeper = false;
			if (end > i) {
				not = c == '"' ? 0 : not;
				i = end - 1;
				continue;
			}
			end = i + 1;
			if (c == '(') {
				nots.push(not);
				depth += 1 + not;
				not = 0;
				deeper = depth > MOST;
			} else if (c == ')') {
				depth -= nots.isEmpty() ? 0 : 1 + nots.pop();
				not = 0;
			} else if (c == '{' || c == '}') {
				nots.clear();
				depth = 0;
				not = 0;
			} else if (Character.isLetter(c) || c == '_') {
				while (end < text.length() && (Character.isLetterOrDigit(text.charAt(end)) || text.charAt(end) == '_')) {
					end++;
				}
				not = text.substring(i, end).equals("not") ? not + 1 : 0;
				deeper = depth + not > MOST;
			}
			if (deeper) {
				if (out == null) {
					out = new StringBuilder(text);
					first = i;
				}
				for (int at = i; at < end; at++) {
					out.setCharAt(at, NO_RULE);
				}
			}
			i = end - 1;
		}
		return out == null ? new Nesting(text, OptionalInt.empty()) : new Nesting(out.toString(), OptionalInt.of(first));
	}

	/** Returns the offset behind the text in quotes or the comment that begins at an offset; that offset if none does. */
	public static int endOfSilent(String text, int from) {
		return text.charAt(from) == '"' ? endOfQuoted(text, from) : text.startsWith("//", from) ? endOf(text, "\n", from)
				: text.startsWith("/*", from) ? endOf(text, "*/", from) : from;
	}

	/** Returns the offset behind the next mark after the two characters at an offset; the end of the text if there is none. */
	public static int endOf(String text, String mark, int from) {
		int at = text.indexOf(mark, from + 2);
		return at < 0 ? text.length() : at + mark.length();
	}

	/** Returns the offset behind the text in quotes that begins at an offset; the end of the text if nothing ends it. */
	public static int endOfQuoted(String text, int from) {
		for (int i = from + 1; i < text.length(); i++) {
			char c = text.charAt(i);
			if (c == '\\') {
				i++;
			} else if (c == '"') {
				return i + 1;
			}
		}
		return text.length();
	}
}
