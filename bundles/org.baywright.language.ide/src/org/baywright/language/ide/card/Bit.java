package org.baywright.language.ide.card;

import java.util.List;
import java.util.Set;

/**
 * One thing on a line of a card, in the order in which it is read: a word, or something to fill in, choose or press.
 *
 * @param kind what it is
 * @param path where it stands within the line; changes name it
 * @param name what it is called, for those who hear the screen
 * @param value what it shows: a text without its quotes, the title of what a name means, the words of a choice
 * @param written what stands in the text for it; empty if nothing does
 * @param options what a {@link Kind#PICK} offers
 * @param optional whether it may stay empty
 * @param indent how far in a new row begins, for a {@link Kind#ROW}
 */
public record Bit(Kind kind, List<Integer> path, String name, String value, String written, List<Option> options, boolean optional,
		int indent) {

	private static final Set<String> HINTED = Set.of("title", "from", "to", "step", "file", "what it shows");

	/** Kinds of things on a line. */
	public enum Kind {
		WORD, TEXT,
		/** A text of one or more sentences. */
		SENTENCE, NUMBER, AMOUNT, DATE, UNIT, PLAIN,
		/** A name that is given here. */
		NAME,
		/** The name of something, shown by its title. */
		REFERENCE,
		/** One of a few. */
		PICK,
		/** Yes or no. */
		FLAG,
		/** Adds what may be left out, or one more of a list. */
		ADD,
		/** Adds rows of which any, or all, must hold. */
		ADD_GROUP,
		REMOVE, UP, DOWN,
		/** What cannot be shown in another way: the line as it is written. */
		FREE,
		/** A new row begins. */
		ROW
	}

	/**
	 * What can be chosen.
	 *
	 * @param number how changes name it
	 * @param label its words
	 */
	public record Option(int number, String label) {
	}

	/** Returns what stands faintly in it as long as it is empty. */
	public String hint() {
		int at = name.lastIndexOf(", ");
		String part = at < 0 ? "" : name.substring(at + 2).replaceFirst(" \\d+$", "");
		return switch (kind) {
		case UNIT -> "unit, such as V";
		case AMOUNT -> "number and unit";
		case NUMBER -> HINTED.contains(part) ? part : "number";
		case DATE -> "year-month-day";
		case REFERENCE -> "choose";
		case NAME -> "name";
		case TEXT, SENTENCE -> HINTED.contains(part) ? part : name.equals("Title") ? "title" : "in words";
		case PLAIN -> HINTED.contains(part) ? part : "as the tool shows it";
		default -> "";
		};
	}

	public Bit {
		path = List.copyOf(path);
		options = List.copyOf(options);
	}

	/** Returns whether two bits can share one control: all but what is filled in is the same. */
	public boolean isLike(Bit other) {
		return kind == other.kind && path.equals(other.path) && name.equals(other.name) && optional == other.optional && indent == other.indent
				&& options.equals(other.options) && (kind != Kind.WORD && kind != Kind.ADD || value.equals(other.value));
	}
}
