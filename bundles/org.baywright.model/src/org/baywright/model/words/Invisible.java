package org.baywright.model.words;

/**
 * Characters that do not show, by the properties of the Unicode Standard: those of the general categories Cc, Cf, Zl, Zp,
 * Cs and Co, noncharacters (23.7), and those that are Default_Ignorable_Code_Point (Unicode Standard Annex 44; the ranges
 * are those of DerivedCoreProperties.txt, Unicode 14.0). Most can make one text look like another one.
 */
public final class Invisible {

	/** What stands where a letter was lost. It shows, but nobody wrote it. */
	public static final int LOST = 0xFFFD;

	private static final int[][] IGNORABLE = { { 0xAD, 0xAD }, { 0x34F, 0x34F }, { 0x61C, 0x61C }, { 0x115F, 0x1160 },
			{ 0x17B4, 0x17B5 }, { 0x180B, 0x180F }, { 0x200B, 0x200F }, { 0x202A, 0x202E }, { 0x2060, 0x206F },
			{ 0x3164, 0x3164 }, { 0xFE00, 0xFE0F }, { 0xFEFF, 0xFEFF }, { 0xFFA0, 0xFFA0 }, { 0xFFF0, 0xFFF8 },
			{ 0x1BCA0, 0x1BCA3 }, { 0x1D173, 0x1D17A }, { 0xE0000, 0xE0FFF } };

	private Invisible() {
	}

	/** Returns whether a character does not show. A tab and the ends of lines are among these; plain spaces are not. */
	public static boolean is(int character) {
		return switch (Character.getType(character)) {
		case Character.CONTROL, Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR,
				Character.SURROGATE, Character.PRIVATE_USE -> true;
		default -> isNoncharacter(character) || isIgnorable(character);
		};
	}

	/**
	 * Returns whether a character that does not show is needed to write: it joins letters or the parts of a pictograph, or
	 * chooses their form (Unicode Standard Annex 31, 2.3; Unicode Technical Standard 51).
	 */
	public static boolean isJoining(int character) {
		return character == 0x200C || character == 0x200D || character == 0xFE0E || character == 0xFE0F;
	}

	/** Returns whether a character says only in which direction the letters beside it are written. */
	public static boolean isDirection(int character) {
		return character == 0x200E || character == 0x200F || character == 0x61C;
	}

	private static boolean isNoncharacter(int character) {
		return (character & 0xFFFE) == 0xFFFE || character >= 0xFDD0 && character <= 0xFDEF;
	}

	private static boolean isIgnorable(int character) {
		for (int[] range : IGNORABLE) {
			if (range[0] <= character && character <= range[1]) {
				return true;
			}
		}
		return false;
	}
}
