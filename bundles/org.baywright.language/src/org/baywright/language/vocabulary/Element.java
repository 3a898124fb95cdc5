package org.baywright.language.vocabulary;

import java.util.List;

/**
 * An element of a file.
 *
 * @param rule its rule of the grammar, which is also the name of its class in the syntax tree
 * @param word the word with which it begins
 * @param clauses its clauses in their usual order; empty for what has no braces
 */
public record Element(String rule, String word, List<Clause> clauses) {

	/** Returns the place of the clause that begins with a word; -1 if there is none. */
	public int indexOf(String word) {
		for (int i = 0; i < clauses.size(); i++) {
			if (clauses.get(i).words().contains(word)) {
				return i;
			}
		}
		return -1;
	}

	/** Returns whether it has no braces, so that it usually stands on one line. */
	public boolean isLine() {
		return clauses.isEmpty();
	}
}
