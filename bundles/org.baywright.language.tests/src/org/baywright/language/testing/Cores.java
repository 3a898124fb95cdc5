package org.baywright.language.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Place;

/** Takes the lines out of a text, one after the other, that a flaw names as its reason. */
public final class Cores {

	private static final Pattern BEFORE = Pattern.compile("(?:\\b(?:given|where)\\s+|,\\s*)$");

	private Cores() {
	}

	/** Returns the lines that a flaw names as its reason. */
	public static List<Place> lines(Flaw flaw) {
		return ((Evidence.Core) flaw.evidence()).lines();
	}

	/**
	 * Asserts that a flaw's reason is as small as can be: without any one of its lines the flaw is gone.
	 *
	 * @param rules the text it was found in
	 * @param flaw the flaw
	 * @param wider for lines that cannot go, such as an outcome that has to be reached or a declaration: what stands
	 * there, and a wider text in its place
	 */
	public static void assertMinimal(MarkedFlaws rules, Flaw flaw, Map<String, String> wider) {
		List<Place> lines = lines(flaw);
		assertFalse(lines.isEmpty(), flaw::toString);
		for (Place place : lines) {
			String text = without(rules.text(), place, wider);
			assertFalse(text.equals(rules.text()), place::toString);
			MarkedFlaws rest = MarkedFlaws.of(text);
			assertEquals(List.of(), rest.problems(), text);
			assertFalse(rest.ids().contains(flaw.id()), () -> "is found without " + place + " as well:\n" + text);
		}
	}

	private static String without(String text, Place place, Map<String, String> wider) {
		int from = place.span().offset();
		int to = from + place.span().length();
		int lineStart = text.lastIndexOf('\n', from) + 1;
		int lineEnd = text.indexOf('\n', to) < 0 ? text.length() : text.indexOf('\n', to);
		String line = text.substring(lineStart, lineEnd);
		for (Map.Entry<String, String> other : wider.entrySet()) {
			if (line.contains(other.getKey())) {
				return text.substring(0, lineStart) + line.replace(other.getKey(), other.getValue()) + text.substring(lineEnd);
			}
		}
		if (text.startsWith(",", to)) {
			to++; // more conditions follow
		} else {
			Matcher before = BEFORE.matcher(text.substring(0, from));
			if (before.find()) {
				from = before.start();
			}
		}
		return blank(text, from, to);
	}

	/** Returns a text in which a rule is blank; everything else keeps its place. */
	public static String withoutRule(String text, String name) {
		Matcher rule = Pattern.compile("\\brule " + name + "\\b[^{]*\\{").matcher(text);
		assertTrue(rule.find(), name);
		int depth = 1;
		int to = rule.end();
		while (depth > 0) {
			char next = text.charAt(to++);
			depth += next == '{' ? 1 : next == '}' ? -1 : 0;
		}
		return blank(text, rule.start(), to);
	}

	private static String blank(String text, int from, int to) {
		return text.substring(0, from) + text.substring(from, to).replaceAll("[^\n]", " ") + text.substring(to);
	}
}
