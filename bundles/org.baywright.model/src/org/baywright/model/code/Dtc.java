package org.baywright.model.code;

import java.util.Locale;
import java.util.Optional;

/**
 * A trouble code in the text form of SAE J2012 / ISO 15031-6: a letter for the system (P powertrain, C chassis, B body,
 * U network), a digit from 0 to 3, and three hexadecimal digits.
 *
 * @param code five characters such as {@code U3003}
 * @param sub failure type byte as two hexadecimal digits, or the empty text
 */
public record Dtc(String code, String sub) implements CodeText {

	private static final String SYSTEMS = "PCBU";

	@Override
	public String display() {
		return sub.isEmpty() ? code : code + "-" + sub;
	}

	/** Returns a plain sentence on what is wrong with the form of a code, or nothing if it is right. */
	public static Optional<String> wrongCode(String code) {
		String text = code.toUpperCase(Locale.ROOT);
		if (text.length() != 5) {
			return Optional.of("A trouble code of this form has five characters; " + code + " has " + code.length() + ".");
		}
		if (SYSTEMS.indexOf(text.charAt(0)) < 0) {
			return Optional.of("A trouble code of this form begins with P, C, B or U, not with " + code.charAt(0) + ".");
		}
		if (text.charAt(1) < '0' || text.charAt(1) > '3') {
			return Optional.of("The second character of a trouble code of this form is 0, 1, 2 or 3, not "
					+ code.charAt(1) + ".");
		}
		for (int i = 2; i < 5; i++) {
			if (!isHex(text.charAt(i))) {
				return Optional.of("The last three characters of a trouble code of this form are hexadecimal digits"
						+ " (0 to 9, A to F); " + code.charAt(i) + " is none.");
			}
		}
		if (text.equals("P0000")) {
			return Optional.of("P0000 means that there is no code.");
		}
		return Optional.empty();
	}

	/** Returns a plain sentence on what is wrong with the form of a failure type byte, or nothing if it is right. */
	public static Optional<String> wrongSub(String sub) {
		String text = sub.toUpperCase(Locale.ROOT);
		if (text.length() == 2 && isHex(text.charAt(0)) && isHex(text.charAt(1))) {
			return Optional.empty();
		}
		return Optional.of("The failure type after sub is two hexadecimal digits, such as 16 or 1A; " + sub
				+ " is not.");
	}

	/** Returns the code with capital letters, as the standard writes it. */
	public static Dtc of(String code, String sub) {
		return new Dtc(code.toUpperCase(Locale.ROOT), sub.toUpperCase(Locale.ROOT));
	}

	/**
	 * Reads the two-byte form that modules send: bits 15 and 14 are the system, 13 and 12 the first digit, then three
	 * hexadecimal digits.
	 *
	 * @param bytes from 0 to 0xFFFF
	 * @return the code, or nothing for 0, which means that there is none
	 * @throws IllegalArgumentException if the number does not fit in two bytes
	 */
	public static Optional<Dtc> fromBytes(int bytes) {
		if (bytes < 0 || bytes > 0xFFFF) {
			throw new IllegalArgumentException("not two bytes: " + bytes);
		}
		if (bytes == 0) {
			return Optional.empty();
		}
		String text = String.format(Locale.ROOT, "%c%d%03X", SYSTEMS.charAt(bytes >> 14), bytes >> 12 & 3, bytes & 0xFFF);
		return Optional.of(new Dtc(text, ""));
	}

	/**
	 * Returns the two-byte form of the code, without its failure type.
	 *
	 * @throws IllegalStateException if the code does not have the standard's form
	 */
	public int toBytes() {
		if (wrongCode(code).isPresent()) {
			throw new IllegalStateException(code + " has no two-byte form");
		}
		return SYSTEMS.indexOf(Character.toUpperCase(code.charAt(0))) << 14 | Integer.parseInt(code.substring(1), 16);
	}

	private static boolean isHex(char c) {
		return c >= '0' && c <= '9' || c >= 'A' && c <= 'F';
	}
}
