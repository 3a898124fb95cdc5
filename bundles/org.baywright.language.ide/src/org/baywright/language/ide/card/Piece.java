package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** A {@link Shape} as somebody has filled it in, or is about to. */
sealed interface Piece {

	/** A word or sign of the language. */
	record Word(String text) implements Piece {
	}

	/**
	 * A value.
	 *
	 * @param shape what it is
	 * @param text as it is written in the text; empty as long as it is not filled in
	 */
	record Value(Shape.Value shape, String text) implements Piece {
	}

	/** Several things, one behind the other. */
	record Row(List<Piece> parts) implements Piece {
		public Row {
			parts = List.copyOf(parts);
		}
	}

	/** Something that may be left out. */
	record Maybe(Shape part, Optional<Piece> piece) implements Piece {
	}

	/**
	 * One of several things.
	 *
	 * @param shape what can be chosen
	 * @param chosen number of the option; -1 if none is chosen yet
	 * @param piece the option as filled in
	 */
	record Choice(Shape.Choice shape, int chosen, Optional<Piece> piece) implements Piece {
	}

	/** Any number of things of the same shape. */
	record Many(Shape.Many shape, List<Piece> items) implements Piece {
		public Many {
			items = List.copyOf(items);
		}
	}

	/**
	 * Conditions that all, or of which any, must hold.
	 *
	 * @param shape the shape of the whole condition
	 * @param any whether one of them is enough
	 * @param not whether the opposite is meant
	 * @param enclosed whether it stands in parentheses
	 * @param items rows, or groups again
	 * @param joins what stands before each item but the first: a comma, {@code and} or {@code or}
	 */
	record Group(Shape.Condition shape, boolean any, boolean not, boolean enclosed, List<Piece> items, List<String> joins) implements Piece {
		public Group {
			items = List.copyOf(items);
			joins = List.copyOf(joins);
		}

		/** Returns the same with other items; what joins new ones is what joins the others. */
		Group with(List<Piece> others) {
			String join = any ? "or" : joins.contains("and") ? "and" : ",";
			List<String> now = new ArrayList<>();
			for (int i = 1; i < others.size(); i++) {
				now.add(!any && i <= joins.size() ? joins.get(i - 1) : join);
			}
			return new Group(shape, any, not, enclosed, others, now);
		}
	}

	/** Returns a shape of which nothing is filled in. */
	static Piece blank(Shape shape) {
		if (shape instanceof Shape.Word word) {
			return new Word(word.text());
		}
		if (shape instanceof Shape.Value value) {
			return new Value(value, "");
		}
		if (shape instanceof Shape.Row row) {
			return new Row(row.parts().stream().map(Piece::blank).toList());
		}
		if (shape instanceof Shape.Maybe maybe) {
			return new Maybe(maybe.part(), Optional.empty());
		}
		if (shape instanceof Shape.Choice choice) {
			return new Choice(choice, -1, Optional.empty());
		}
		if (shape instanceof Shape.Many many) {
			return new Many(many, Collections.nCopies(many.least(), blank(many.item())));
		}
		Shape.Condition condition = (Shape.Condition) shape;
		return new Group(condition, false, false, false, List.of(blank(condition.atom())), List.of());
	}

	/** Returns the parts in their order. */
	default List<Piece> children() {
		if (this instanceof Row row) {
			return row.parts();
		}
		if (this instanceof Maybe maybe) {
			return maybe.piece().stream().toList();
		}
		if (this instanceof Choice choice) {
			return choice.piece().stream().toList();
		}
		return this instanceof Many many ? many.items() : this instanceof Group group ? group.items() : List.of();
	}

	/** Returns whether all that must be filled in is filled in. */
	default boolean isWhole() {
		if (this instanceof Value value && value.text().isEmpty() || this instanceof Choice choice && choice.chosen() < 0
				|| this instanceof Many many && many.items().size() < many.shape().least()
				|| this instanceof Group group && group.items().isEmpty()) {
			return false;
		}
		return children().stream().allMatch(Piece::isWhole);
	}

	/** Returns whether nothing is filled in. */
	default boolean isBlank() {
		if (this instanceof Value value && !value.text().isEmpty() || this instanceof Choice choice && choice.chosen() >= 0
				|| this instanceof Maybe maybe && maybe.piece().isPresent() && maybe.part() instanceof Shape.Word) {
			return false;
		}
		return children().stream().allMatch(Piece::isBlank);
	}
}
