package org.baywright.language.ide.fix;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.model.Mend;

/**
 * Changes that answer a problem or a flaw.
 *
 * @param title what they do, as a menu entry
 * @param about id of the flaw, or of the kind of problem
 * @param edits the changes of each file, by file and place
 * @param preview where it changes something, and those lines as they are and as they will be
 * @param next what the author fills in next, if anything
 * @param mend what it was made of; nothing for a fix of a flaw
 */
public record QuickFix(String title, String about, SortedMap<String, List<TextEdit>> edits, String preview,
		Optional<Next> next, Optional<Mend> mend) {

	/**
	 * Where the cursor goes.
	 *
	 * @param file path relative to the project
	 * @param offset where the suggestion begins, in the changed text
	 * @param length how long the suggestion is
	 */
	public record Next(String file, int offset, int length) {
	}

	public QuickFix {
		edits = Collections.unmodifiableSortedMap(new TreeMap<>(edits));
	}

	/** Returns the same as what would mend a problem. */
	QuickFix mending(Mend what) {
		return new QuickFix(title, about, edits, preview, next, Optional.of(what));
	}
}
