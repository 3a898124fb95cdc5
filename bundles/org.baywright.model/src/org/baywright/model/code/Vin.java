package org.baywright.model.code;

import java.util.Locale;
import java.util.Optional;

/**
 * Vehicle identification numbers: form by ISO 3779, check digit by 49 CFR 565. The check digit is required in some
 * markets only, so it is never checked unasked.
 */
public final class Vin {

	/** Characters in every number. */
	public static final int LENGTH = 17;

	/** Stands for any permitted character in a pattern. */
	public static final char ANY = '?';

	private static final int CHECK_POSITION = 8;
	private static final int[] WEIGHTS = { 8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2 };
	private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ";
	private static final String LETTER_VALUES = "12345678123457923456789";

	private Vin() {
	}

	/** Returns a plain sentence on what is wrong with the form of a number, or nothing if it is right. */
	public static Optional<String> wrong(String vin) {
		String text = vin.toUpperCase(Locale.ROOT);
		for (int i = 0; i < text.length(); i++) {
			if (value(text.charAt(i)) < 0) {
				return Optional.of(wrongCharacter(vin.charAt(i)));
			}
		}
		if (text.length() != LENGTH) {
			return Optional.of("A vehicle identification number has 17 characters; this one has " + text.length() + ".");
		}
		return Optional.empty();
	}

	/** Returns a plain sentence on what is wrong with the form of a pattern, or nothing if it is right. */
	public static Optional<String> wrongPattern(String pattern) {
		String text = pattern.toUpperCase(Locale.ROOT);
		if (text.isEmpty()) {
			return Optional.of("The beginning of a vehicle identification number is empty.");
		}
		if (text.length() > LENGTH) {
			return Optional.of("A vehicle identification number has 17 characters; this beginning has "
					+ text.length() + ".");
		}
		for (int i = 0; i < text.length(); i++) {
			if (text.charAt(i) != ANY && value(text.charAt(i)) < 0) {
				return Optional.of(wrongCharacter(pattern.charAt(i)));
			}
		}
		return Optional.empty();
	}

	/**
	 * Returns the check digit that belongs in position 9: {@code 0} to {@code 9} or {@code X}.
	 *
	 * @param vin a number of the right form; its own position 9 does not matter
	 * @throws IllegalArgumentException if the form is wrong
	 */
	public static char checkDigit(String vin) {
		if (wrong(vin).isPresent()) {
			throw new IllegalArgumentException(wrong(vin).get());
		}
		String text = vin.toUpperCase(Locale.ROOT);
		int sum = 0;
		for (int i = 0; i < LENGTH; i++) {
			sum += WEIGHTS[i] * value(text.charAt(i));
		}
		int rest = sum % 11;
		return rest == 10 ? 'X' : (char) ('0' + rest);
	}

	/**
	 * Returns whether position 9 holds the check digit.
	 *
	 * @param vin a number of the right form
	 * @throws IllegalArgumentException if the form is wrong
	 */
	public static boolean hasCheckDigit(String vin) {
		return checkDigit(vin) == Character.toUpperCase(vin.charAt(CHECK_POSITION));
	}

	/**
	 * Returns whether a number begins as a pattern says.
	 *
	 * @param vin a number, or the beginning of one
	 * @param pattern a beginning, in which {@code ?} stands for any character
	 */
	public static boolean matches(String vin, String pattern) {
		if (vin.length() < pattern.length()) {
			return false;
		}
		for (int i = 0; i < pattern.length(); i++) {
			char wanted = Character.toUpperCase(pattern.charAt(i));
			if (wanted != ANY && wanted != Character.toUpperCase(vin.charAt(i))) {
				return false;
			}
		}
		return true;
	}

	/**
	 * Returns the shortest beginning of the numbers that have both beginnings, or nothing if no number has both.
	 *
	 * @param one a pattern of the right form
	 * @param two another one
	 */
	public static Optional<String> both(String one, String two) {
		StringBuilder both = new StringBuilder();
		for (int i = 0; i < Math.max(one.length(), two.length()); i++) {
			char first = i < one.length() ? Character.toUpperCase(one.charAt(i)) : ANY;
			char second = i < two.length() ? Character.toUpperCase(two.charAt(i)) : ANY;
			if (first != ANY && second != ANY && first != second) {
				return Optional.empty();
			}
			both.append(first == ANY ? second : first);
		}
		return Optional.of(both.toString());
	}

	/** Returns whether all numbers of the narrow beginning have the wide one too. */
	public static boolean covers(String wide, String narrow) {
		for (int i = 0; i < wide.length(); i++) {
			char wanted = Character.toUpperCase(wide.charAt(i));
			if (wanted != ANY && (i >= narrow.length() || wanted != Character.toUpperCase(narrow.charAt(i)))) {
				return false;
			}
		}
		return true;
	}

	private static int value(char c) {
		if (c >= '0' && c <= '9') {
			return c - '0';
		}
		int letter = LETTERS.indexOf(c);
		return letter < 0 ? -1 : LETTER_VALUES.charAt(letter) - '0';
	}

	private static String wrongCharacter(char c) {
		char upper = Character.toUpperCase(c);
		if (upper == 'I' || upper == 'O' || upper == 'Q') {
			return "A vehicle identification number never has the letter " + upper
					+ ", which would be taken for a digit.";
		}
		return "A vehicle identification number has only letters A to Z and digits; " + c + " is neither.";
	}
}
