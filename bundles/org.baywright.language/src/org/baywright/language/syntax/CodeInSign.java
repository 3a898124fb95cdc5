package org.baywright.language.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.language.text.Nesting;

/**
 * A trouble code that is written into the line of a sign, where no code can stand. The parser would take the next element
 * for its module, and nothing after that would be understood.
 *
 * @param sign name of the sign
 * @param code the code, as far as one can be seen
 * @param from where it begins
 * @param to where it ends
 */
public record CodeInSign(String sign, String code, int from, int to) {

	/** What the parser sees in place of the first letter. */
	static final String NO_RULE = "\u00A7";

	private static final String WORD = "sign";
	private static final String TEXT = "\"[^\"\\n]*+\"?+";
	/** No declaration of a code is meant that goes on with its module. */
	private static final Pattern LINE = Pattern.compile("sign[ \\t]++(\\S++)(?:[ \\t]++" + TEXT + ")?+(?:[ \\t]++intermittent)?+[ \\t]++"
			+ "((?:code|dtc|j1939|raw)\\b(?:[ \\t]*+(?!on\\b|//|/\\*|[{}])(?:" + TEXT + "|[^\\s\"]++)){0,8}+)(?!\\s*+on\\b)");
	private static final Pattern CODE = Pattern.compile("\\b[PBCUpbcu][0-9A-Fa-f]{4}\\b");
	private static final String SUCH = "B1207";

	/** Returns the text with as many characters; such codes are written over by something that is no rule. */
	public static String keptFromParser(String text) {
		List<CodeInSign> found = in(text);
		StringBuilder out = found.isEmpty() ? null : new StringBuilder(text);
		found.forEach(code -> out.replace(code.from(), code.to(), NO_RULE + " ".repeat(code.to() - code.from() - 1)));
		return out == null ? text : out.toString();
	}

	/** Returns the code that begins at a place. */
	static Optional<CodeInSign> at(String text, int offset) {
		return in(text).stream().filter(code -> code.from() == offset).findFirst();
	}

	/** Looks through a text, passing over quoted texts and comments. */
	private static List<CodeInSign> in(String text) {
		List<CodeInSign> found = new ArrayList<>();
		Matcher line = LINE.matcher(text);
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			if (c == '"') {
				i = Nesting.endOfQuoted(text, i) - 1;
			} else if (c == '/') {
				i = text.startsWith("//", i) ? Nesting.endOf(text, "\n", i) - 1 : text.startsWith("/*", i) ? Nesting.endOf(text, "*/", i) - 1 : i;
			} else if (c == 's' && text.startsWith(WORD, i) && (i == 0 || !Character.isJavaIdentifierPart(text.charAt(i - 1)))
					&& line.region(i, text.length()).lookingAt()) {
				Matcher code = CODE.matcher(line.group(2));
				found.add(new CodeInSign(line.group(1), code.find() ? code.group().toUpperCase(Locale.ROOT) : SUCH, line.start(2), line.end(2)));
				i = line.end() - 1;
			}
		}
		return found;
	}

	String advice() {
		String name = code.toLowerCase(Locale.ROOT);
		return "Define the code in a line of its own, with the module that stores it, such as `code " + name + " on body = dtc " + code
				+ "`. In a rule name both: `given " + sign + ", " + name + " present`.";
	}
}
