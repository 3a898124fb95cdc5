package org.baywright.language.ide.card;

import java.util.List;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.xtext.AbstractRule;

/** What may be written at a place of an element, as the grammar says; what is filled in is a {@link Piece}. */
sealed interface Shape {

	/** What a value is. */
	enum Sort {
		/** The name of something that is declared here. */
		NAME,
		/** The name of something declared elsewhere. */
		REFERENCE, TEXT, NUMBER,
		/** A number with its unit. */
		AMOUNT, DATE, UNIT,
		/** Whatever else is written without quotes, such as the letters of a trouble code. */
		PLAIN
	}

	/** A word or sign of the language. */
	record Word(String text) implements Shape {

		boolean isSign() {
			return !Character.isLetter(text.charAt(0));
		}
	}

	/**
	 * Something to fill in.
	 *
	 * @param sort what it is
	 * @param feature where the syntax tree keeps it; empty if it does not say
	 * @param type what a name must mean; null for all else
	 * @param rule the rule of the grammar by which it is written
	 */
	record Value(Sort sort, String feature, EClass type, AbstractRule rule) implements Shape {
	}

	/** Several things, one behind the other. */
	record Row(List<Shape> parts) implements Shape {
	}

	/** Something that may be left out. */
	record Maybe(Shape part) implements Shape {
	}

	/**
	 * One of several things; each begins in another way.
	 *
	 * @param options the things
	 * @param feature where the syntax tree keeps it; empty if it does not say
	 */
	record Choice(List<Shape> options, String feature) implements Shape {
	}

	/**
	 * Any number of things of the same shape.
	 *
	 * @param item the shape
	 * @param separator what stands between them; empty if nothing does
	 * @param least how many there must be
	 */
	record Many(Shape item, String separator, int least) implements Shape {
	}

	/** A condition: rows that all or of which any must hold. */
	record Condition(Row atom) implements Shape {
	}
}
