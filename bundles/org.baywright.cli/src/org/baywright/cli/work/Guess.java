package org.baywright.cli.work;

import java.util.Collection;

import org.baywright.language.text.Spelling;

/** What a user may have meant. */
public final class Guess {

	private Guess() {
	}

	/**
	 * Returns a sentence that helps.
	 *
	 * @param written what the user wrote
	 * @param known what there is
	 * @param otherwise what to say if nothing is alike
	 */
	public static String advice(String written, Collection<String> known, String otherwise) {
		return Spelling.nearest(written, known).map(name -> "Did you mean " + name + "?").orElse(otherwise);
	}
}
