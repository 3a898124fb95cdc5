package org.baywright.analysis.proof;

import java.util.Collection;
import java.util.List;

/**
 * A line of the source, told so that moving the whole element in its file does not change it.
 *
 * @param kind "rule" or "law"
 * @param element name of the rule; title of the law, or of {@linkplain #several several} that say something together
 * @param offset lines below the line of the element's name; may be negative
 */
public record SourceLine(String kind, String element, int offset) {

	private static final String BETWEEN = "\n";

	/** Returns the title of what laws say together; a title never holds the end of a line. */
	static String several(Collection<String> titles) {
		return String.join(BETWEEN, titles);
	}

	/** Returns the names of the elements it stands for: more than one only for what several laws say together. */
	public List<String> elements() {
		return List.of(element.split(BETWEEN));
	}
}
