package org.baywright.model;

import java.util.List;
import java.util.Locale;

/** What would mend a problem of a text. It is made where the problem is found, since all is known there. */
public sealed interface Mend {

	/** Returns what it does, as a menu entry. */
	String title();

	/**
	 * A text in place of what stands at a place; where nothing stands, it is inserted.
	 *
	 * @param span where
	 * @param text what to write there
	 */
	record Piece(Span span, String text) {
	}

	/**
	 * Write something else. It changes what the text says.
	 *
	 * @param pieces what to write, none of it over another
	 */
	record Write(String title, List<Piece> pieces) implements Mend {
		public Write {
			pieces = List.copyOf(pieces);
		}
	}

	/**
	 * Put brackets, quotes and signs that do not show in order. Nobody needs to know what a rule means for that.
	 *
	 * @param pieces what to write, none of it over another
	 */
	record Tidy(String title, List<Piece> pieces) implements Mend {
		public Tidy {
			pieces = List.copyOf(pieces);
		}
	}

	/**
	 * Write the name that was probably meant.
	 *
	 * @param span where the wrong one stands
	 * @param old the wrong one
	 * @param name the one that was meant
	 * @param value whether it is the name of a value, which more words may be
	 */
	record Name(Span span, String old, String name, boolean value) implements Mend {

		@Override
		public String title() {
			return "Write " + text();
		}

		/** Returns the name as it is written in a text. */
		public String text() {
			return value ? Written.value(name) : Written.name(name);
		}
	}

	/**
	 * Define what a name may be meant to be.
	 *
	 * @param thing what it is to be
	 * @param name its name; that of a fault with its part in front
	 * @param values values that it must have; empty where any will do
	 */
	record Define(Thing thing, String name, List<String> values) implements Mend {
		public Define {
			values = List.copyOf(values);
		}

		@Override
		public String title() {
			return "Define the " + thing.word() + " " + name;
		}
	}

	/** What can be defined without knowing more than its name. */
	enum Thing {
		FAMILY, STATE, TOOL, HAZARD, MODULE, SIGN, PART, FAULT, TEST;

		/** Returns what a technician calls it, and the word that begins it. */
		public String word() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	/**
	 * Add clauses to an element with braces.
	 *
	 * @param element the word that begins the element
	 * @param name its name
	 * @param lines the clauses, a line for each
	 * @param signed whether a line that says who writes it, and when, follows them
	 */
	record AddClauses(String title, String element, String name, List<String> lines, boolean signed) implements Mend {
		public AddClauses {
			lines = List.copyOf(lines);
		}
	}
}
