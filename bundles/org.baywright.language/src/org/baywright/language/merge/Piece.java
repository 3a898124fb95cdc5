package org.baywright.language.merge;

/**
 * A piece of a file: an element with the comments in front of it, or a comment that belongs to the file.
 *
 * @param key what it is
 * @param gap the blanks in front of it
 * @param body its text, with the comments in front of it and behind it on its last line
 */
public record Piece(Key key, Gap gap, String body) {

	/** What the word of a piece is that is no element. */
	static final String COMMENT = "comment";
	/** What the word of a piece is that is a whole file. */
	public static final String FILE = "file";

	/**
	 * What a piece is, wherever it stands.
	 *
	 * @param kind the word with which such an element begins, {@code comment} or {@code file}
	 * @param name its name, or what tells it apart from others of its kind
	 * @param number 1, or which of those with the same name it is, in the order of files and texts
	 */
	public record Key(String kind, String name, int number) {

		/** Returns the key in words, which are the same for everybody. */
		@Override
		public String toString() {
			return (name.isEmpty() ? kind : kind + " " + name) + (number > 1 ? " (" + number + ")" : "");
		}
	}

	/**
	 * The blanks in front of a piece.
	 *
	 * @param text the blanks
	 * @param first whether the file begins with them
	 */
	record Gap(String text, boolean first) {
	}
}
