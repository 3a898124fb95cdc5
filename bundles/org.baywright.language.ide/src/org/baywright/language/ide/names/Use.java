package org.baywright.language.ide.names;

/**
 * A place where a name stands.
 *
 * @param file path relative to the project
 * @param offset characters before the name
 * @param length characters of the name, with its {@code ^}
 * @param line all of the line it stands in, without blanks around it
 * @param declaration whether the thing is declared here
 */
public record Use(String file, int offset, int length, String line, boolean declaration) implements Comparable<Use> {

	@Override
	public int compareTo(Use other) {
		int byFile = file.compareTo(other.file);
		return byFile != 0 ? byFile : Integer.compare(offset, other.offset);
	}
}
