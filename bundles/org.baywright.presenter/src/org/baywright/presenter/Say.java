package org.baywright.presenter;

import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.baywright.analysis.Verdict;
import org.baywright.model.words.Words;

/** Small words that several screens use. */
public final class Say {

	private static final Pattern HIDDEN = Pattern.compile("[\\p{C}\\p{Zl}\\p{Zp}\\uFFFD]");

	private Say() {
	}

	/** Returns a number with its noun: "1 rule", "3 rules". */
	public static String count(long number, String one) {
		return count(number, one, one + "s");
	}

	/** Returns a number with its noun: "1 test", "no tests". */
	public static String count(long number, String one, String many) {
		return (number == 0 ? "no" : Long.toString(number)) + " " + (number == 1 ? one : many);
	}

	/** Returns the text with a capital letter in front. */
	public static String upper(String text) {
		return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
	}

	/** Returns the text with a small letter in front. */
	public static String lower(String text) {
		return text.isEmpty() ? text : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
	}

	/** Returns whether all words of a search stand in a text, in capitals or not; a search without words finds all. */
	public static boolean holds(String text, String words) {
		String whole = text.toLowerCase(Locale.ROOT);
		return Stream.of(words.toLowerCase(Locale.ROOT).strip().split("\\s+")).allMatch(whole::contains);
	}

	/** Returns the name of a value in small letters. */
	public static String lower(Enum<?> value) {
		return value.name().toLowerCase(Locale.ROOT);
	}

	/** Returns a verdict that stands: "12 V battery: one cell open is confirmed". */
	public static String verdict(Words words, Verdict verdict) {
		return verdict.isReferral() ? "Refer to " + verdict.fault()
				: words.fault(verdict.fault()) + " is " + verdict.kind().word();
	}

	/** Returns the text in one line, with one blank between its words. */
	public static String inLine(String text) {
		return text.strip().replaceAll("\\s+", " ");
	}

	/** Returns whether letters of a text do not show, or could not be read. */
	public static boolean hides(String text) {
		return HIDDEN.matcher(text).find();
	}

	/** Returns the text without tabs and line breaks. */
	public static String oneLine(String text) {
		return text.replace("\n", "; ").replaceAll("\\p{Cntrl}+", " ");
	}
}
