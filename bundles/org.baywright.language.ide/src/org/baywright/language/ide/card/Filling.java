package org.baywright.language.ide.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.conversion.Texts;
import org.baywright.language.ide.text.Spelled;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.model.words.Names;

/** Turns what somebody typed into what is written. */
final class Filling {

	/** What was typed cannot be written; the message says what to do. */
	static final class Refused extends Exception {
		private static final long serialVersionUID = 1L;

		Refused(String message) {
			super(message);
		}
	}

	private Filling() {
	}

	/**
	 * Fills a value in, and with it what follows from it: a name from its title, the date of today beside an author.
	 *
	 * @param taken names that something of the project has already
	 */
	static Piece fill(Piece piece, Change.Fill change, Set<String> taken, LocalDate today) throws Refused {
		Piece.Value value = (Piece.Value) Pieces.at(piece, change.path());
		String written = written(value.shape(), change.typed().strip(), change.known());
		Piece filled = Pieces.fill(piece, change.path(), written);
		return written.isEmpty() ? filled : following(filled, change, value.shape(), taken, today);
	}

	private static Piece following(Piece piece, Change.Fill change, Shape.Value shape, Set<String> taken, LocalDate today) {
		if (shape.sort() != Shape.Sort.TEXT) {
			return piece;
		}
		// the title of a name is left out or there, so it is one step further down than its name
		boolean title = shape.feature().equals("title") && change.path().size() >= 2;
		List<Integer> owner = change.path().subList(0, Math.max(0, change.path().size() - (title ? 2 : 1)));
		if (!(Pieces.at(piece, owner) instanceof Piece.Row row)) {
			return piece;
		}
		Piece now = piece;
		for (int i = 0; i < row.parts().size(); i++) {
			if (row.parts().get(i) instanceof Piece.Value other && other.text().isEmpty()) {
				List<Integer> at = new ArrayList<>(owner);
				at.add(i);
				if (title && other.shape().sort() == Shape.Sort.NAME) {
					String name = Names.free(Names.suggest(change.typed()), taken);
					now = name.isEmpty() ? now : Pieces.fill(now, at, nameOf(other.shape(), name));
				} else if (!title && other.shape().sort() == Shape.Sort.DATE) {
					now = Pieces.fill(now, at, today.toString());
				}
			}
		}
		return now;
	}

	private static String nameOf(Shape.Value shape, String name) {
		return shape.rule().getName().equals("ValueName") ? Spelled.writtenValue(name) : Spelled.written(name);
	}

	private static String written(Shape.Value shape, String typed, List<Change.Named> known) throws Refused {
		if (typed.isEmpty()) {
			return "";
		}
		return switch (shape.sort()) {
		case TEXT -> Texts.quote(typed);
		case REFERENCE -> reference(shape, typed, known);
		case NAME -> fitting(shape, nameOf(shape, typed), "A name is made of letters, digits and underscores, and begins with a letter.");
		case AMOUNT -> fitting(shape, decimal(typed), "Write a number and its unit, such as 12.4 V or 8 min.");
		case NUMBER -> fitting(shape, decimal(typed), "Write a number, such as 5 or 12.4.");
		case DATE -> fitting(shape, typed, "Write the day as year, month and day, such as 2026-03-02.");
		case UNIT -> fitting(shape, typed, "Write a unit, such as V or km/h.");
		case PLAIN -> fitting(shape, typed, "This cannot be written here.");
		};
	}

	/** A comma is a point, but before three digits nobody knows whether it parts thousands. */
	private static String decimal(String typed) throws Refused {
		if (typed.matches("[-+]?\\d{1,3}(,\\d{3})+\\b.*")) {
			throw new Refused("“" + typed + "” may mean two numbers. Write it without the comma, or with a point where the whole number ends.");
		}
		return typed.replaceFirst("^([-+]?\\d+),(\\d)", "$1.$2");
	}

	private static String fitting(Shape.Value shape, String text, String otherwise) throws Refused {
		List<Word> words = Words.of(text);
		if (words.isEmpty() || new Matching(text, words).exactly(shape, 0, words.size()).isEmpty()) {
			throw new Refused("“" + text + "” does not fit. " + otherwise);
		}
		return text;
	}

	private static String reference(Shape.Value shape, String typed, List<Change.Named> known) throws Refused {
		boolean value = shape.type() == BayPackage.Literals.NAMED_VALUE;
		Optional<Change.Named> meant = meant(typed, known.stream().filter(one -> !one.isFresh()).toList());
		if (meant.isPresent()) {
			String name = meant.get().name();
			return value ? Spelled.writtenValue(name) : Spelled.written(name);
		}
		throw new Refused("There is nothing here that is called “" + typed + "”. Choose from the list"
				+ (known.stream().anyMatch(Change.Named::isFresh) ? ", whose last line adds it." : ", or add it to the project first."));
	}

	/** Returns what is meant: a name, else a title, else the only one that holds what was typed. */
	private static Optional<Change.Named> meant(String typed, List<Change.Named> known) {
		String small = typed.toLowerCase(Locale.ROOT);
		Optional<Change.Named> exact = known.stream().filter(one -> one.name().equals(typed)).findFirst()
				.or(() -> known.stream().filter(one -> one.title().toLowerCase(Locale.ROOT).equals(small)).findFirst());
		if (exact.isPresent()) {
			return exact;
		}
		List<Change.Named> holding = known.stream()
				.filter(one -> one.title().toLowerCase(Locale.ROOT).contains(small) || one.name().contains(small)).toList();
		return holding.size() == 1 ? Optional.of(holding.get(0)) : Optional.empty();
	}
}
