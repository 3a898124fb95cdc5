package org.baywright.language.vocabulary;

import java.util.List;

/**
 * A clause that may stand between the braces of an element.
 *
 * @param words the words with which it can begin: one, unless it is made of a rule of its own
 * @param part the rule of the grammar that it is made of, such as {@code Outcome}; empty if it is none of its own
 * @param times how often it may be given
 * @param draft what completion writes: {@code <…>} is filled in by the author
 */
public record Clause(List<String> words, String part, Times times, String draft) {

	/** How often a clause may be given in one element. */
	public enum Times {
		/** Once; a second one is an error, and one of the two goes. */
		ONCE,
		/** Once; a second one is an error, and what it lists goes into the first. */
		ONCE_LIST,
		/** All of it usually stands in one, and what stands in a second one is added. */
		GATHERED,
		/** As often as there is something to say. */
		MANY
	}

	/** Returns whether a second one is an error. */
	public boolean isOnce() {
		return times == Times.ONCE || times == Times.ONCE_LIST;
	}

	/** Returns whether nobody wants to be offered a second one. */
	public boolean isEnoughOnce() {
		return times != Times.MANY;
	}

	/** Returns what to do about a second one. */
	public String adviceIfTwice() {
		return times == Times.ONCE ? "Keep one of the two."
				: "Put all of it after one `" + words.get(0) + "`, with commas between.";
	}
}
