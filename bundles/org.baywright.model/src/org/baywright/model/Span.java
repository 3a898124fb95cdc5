package org.baywright.model;

import java.util.Comparator;
import java.util.Objects;

/**
 * A place in a rule file.
 *
 * @param file path of the file relative to its project, with forward slashes
 * @param line first line, from 1
 * @param column first column, from 1
 * @param endLine last line, from 1
 * @param endColumn the column after the last character, from 1
 * @param offset characters before the place, from 0
 * @param length characters in the place
 */
public record Span(String file, int line, int column, int endLine, int endColumn, int offset, int length)
		implements Comparable<Span> {

	private static final Comparator<Span> ORDER = Comparator.comparing(Span::file).thenComparingInt(Span::offset)
			.thenComparingInt(Span::length).thenComparingInt(Span::line).thenComparingInt(Span::column);

	/** For elements that were made by a program and stand in no file. */
	public static final Span NONE = new Span("", 1, 1, 1, 1, 0, 0);

	/** How the name of a rule pack ends. */
	public static final String PACK = ".baypack";

	public Span {
		Objects.requireNonNull(file);
	}

	@Override
	public int compareTo(Span other) {
		return ORDER.compare(this, other);
	}

	/** Returns whether the place is in a project, or a rule pack, that the project only builds on: it is read and never changed. */
	public boolean isElsewhere() {
		return isElsewhere(file);
	}

	/**
	 * Returns whether a file belongs to a project, or is a rule pack, that a project only builds on.
	 *
	 * @param file its path relative to the project, with forward slashes
	 */
	public static boolean isElsewhere(String file) {
		return file.startsWith("../") || file.endsWith(PACK);
	}

	/** Returns {@code file:line:column}, the form that terminals and editors make a link of. */
	@Override
	public String toString() {
		return file + ":" + line + ":" + column;
	}
}
