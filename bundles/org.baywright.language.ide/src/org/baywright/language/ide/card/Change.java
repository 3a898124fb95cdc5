package org.baywright.language.ide.card;

import java.util.List;

/** What somebody does on a line of a card; a path is that of a {@link Bit}. */
public sealed interface Change {

	/**
	 * Fills something in, as it was typed; the empty text takes it away.
	 *
	 * @param known what can be meant by a name that is typed
	 */
	record Fill(List<Integer> path, String typed, List<Named> known) implements Change {
	}

	/** Takes an option of a choice. */
	record Pick(List<Integer> path, int option) implements Change {
	}

	/** Adds what may be left out, or one more of a list. */
	record Add(List<Integer> path) implements Change {
	}

	/** Adds rows to a condition of which any, or all, must hold. */
	record AddGroup(List<Integer> path) implements Change {
	}

	/** Takes one thing of a list away, or what may be left out. */
	record Remove(List<Integer> path) implements Change {
	}

	/** Moves one thing of a list up (-1) or down (1). */
	record Move(List<Integer> path, int by) implements Change {
	}

	/** Writes the line anew, as it is to stand in the text. */
	record Free(String text) implements Change {
	}

	/** Takes the whole line away. */
	record Delete() implements Change {
	}

	/** Lets the whole line change places with the one of its kind above (-1) or below (1). */
	record MoveLine(int by) implements Change {
	}

	/**
	 * Something that a name can mean.
	 *
	 * @param name its name
	 * @param title its title; its name if it has none
	 * @param detail what it is
	 */
	record Named(String name, String title, String detail) {

		/** Returns something of a kind that is not there yet and can be added: it has no name, and its title is its kind. */
		static Named fresh(String kind) {
			return new Named("", kind, "");
		}

		/** Returns whether it is not there yet. */
		public boolean isFresh() {
			return name.isEmpty();
		}
	}
}
