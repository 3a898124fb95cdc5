package org.baywright.language.ide.grid;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.ide.text.TextEdit;

/**
 * What is to be written.
 *
 * @param edits the changes of each file, by file and place; a file may be a new one, which is empty at first
 * @param preview where something changes, and those lines as they are and as they will be; the empty text if nothing does
 */
public record GridEdit(SortedMap<String, List<TextEdit>> edits, String preview) {

	public GridEdit {
		edits = Collections.unmodifiableSortedMap(new TreeMap<>(edits));
	}

	/** Returns whether nothing changes. */
	public boolean isEmpty() {
		return edits.isEmpty();
	}
}
