package org.baywright.language.ide.text;

/**
 * A word of a text.
 *
 * @param kind what it is
 * @param text as it is written
 * @param offset characters before it
 */
public record Word(Kind kind, String text, int offset) {

	/** Kinds of words. */
	public enum Kind {
		/** A word or sign of the language; some may serve as names. */
		KEYWORD,
		/** A name that is no word of the language. */
		NAME, NUMBER,
		/** A text in quotes; without its end it reaches to the end of the line. */
		STRING, COMMENT,
		/** What cannot stand in a rule file. */
		OTHER
	}

	/** Returns the offset behind it. */
	public int end() {
		return offset + text.length();
	}

	/** Returns whether it is this word or sign of the language. */
	public boolean is(String word) {
		return kind == Kind.KEYWORD && text.equals(word);
	}

	/** Returns whether it is a word or a name, and no sign. */
	public boolean isWord() {
		return kind == Kind.NAME || kind == Kind.KEYWORD && Character.isLetter(text.charAt(0));
	}

	/** Returns whether nothing of the language is read at an offset strictly inside of it. */
	public boolean isMute() {
		return kind == Kind.STRING || kind == Kind.COMMENT;
	}
}
