package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.conversion.Texts;
import org.baywright.language.ide.card.Bit.Kind;
import org.baywright.language.ide.card.Bit.Option;
import org.baywright.language.ide.card.Shape.Sort;

/** Sets a piece out as what is to be seen of it. */
final class Bits {

	private static final Map<String, String> SIGNS = Map.of("..", "to", ":", ":", "=", "");
	private static final Set<String> SILENT = Set.of("{", "}", "(", ")", ",");
	/** Texts that are a few words. */
	private static final Set<String> SHORT = Set.of("title", "name", "authors", "author", "reviewer", "vin", "pattern", "meaning", "flaw", "text", "file");
	/** What a value is called that stands beside others without a word of its own. */
	private static final Map<String, String> CALLED = Map.of("unit", "unit", "low", "from", "value", "value", "limit", "limit",
			"file", "file", "words", "what it shows");
	/** What may stand before a value and may be left out. */
	private static final List<String> SPARED = List.of("is");
	static final String ALL = "all of these";
	static final String ANY = "any of these";
	static final String NOT_ALL = "not all of these";
	static final String NONE = "none of these";

	/** What only the project knows. */
	interface Knowing {

		/** Returns the title of what a name at a place means. */
		String title(Shape.Value shape, String name, List<Integer> path);

		/** Returns whether an option fits at a place. */
		boolean fits(Shape option, List<Integer> path);
	}

	private final Knowing knowing;
	private final String label;
	/** The word that the line begins with, as the label would be without a plainer one. */
	private final String said;
	private final List<Bit> bits = new ArrayList<>();
	private String last = "";

	/**
	 * @param element the word of the element
	 * @param said what the line is called after its word
	 */
	Bits(Knowing knowing, String element, String said) {
		this.knowing = knowing;
		this.said = said;
		label = Labels.field(element, said);
	}

	/** Returns what is to be seen of the parts of a head; its first word is what the card is about. */
	List<Bit> parts(Piece.Row row, int from, int to) {
		int first = from == 0 && row.parts().get(0) instanceof Piece.Word ? 1 : from;
		row(row.parts().subList(first, to), List.of(), first);
		return bits;
	}

	/** Returns what is to be seen of a piece. */
	List<Bit> all(Piece piece) {
		show(piece, List.of());
		return bits;
	}

	private void show(Piece piece, List<Integer> path) {
		if (piece instanceof Piece.Word word) {
			word(word.text(), path);
		} else if (piece instanceof Piece.Value value) {
			value(value, path, false);
		} else if (piece instanceof Piece.Row row) {
			row(row.parts(), path, 0);
		} else if (piece instanceof Piece.Maybe maybe) {
			maybe(maybe, path);
		} else if (piece instanceof Piece.Choice choice) {
			choice(choice, path, false);
		} else if (piece instanceof Piece.Many many) {
			many(many, path);
		} else if (piece instanceof Piece.Group group) {
			group(group, path, 0);
		}
	}

	private static List<Integer> in(List<Integer> path, int step) {
		List<Integer> longer = new ArrayList<>(path);
		longer.add(step);
		return longer;
	}

	private void add(Kind kind, List<Integer> path, String value, String written, List<Option> options, boolean optional, int indent) {
		boolean alone = kind == Kind.WORD || kind == Kind.ROW || last.isEmpty() || last.equalsIgnoreCase(label) || last.equalsIgnoreCase(said);
		String of = alone ? label : label + ", " + last;
		bits.add(new Bit(kind, path, of, value, written, options, optional, indent));
	}

	private void word(String word, List<Integer> path) {
		if (SILENT.contains(word)) {
			return;
		}
		String shown = SIGNS.getOrDefault(word, word.replace('_', ' '));
		last = shown.isEmpty() || !Character.isLetter(shown.charAt(0)) ? last : shown;
		// the label has said it
		boolean told = bits.isEmpty() && (said.equalsIgnoreCase(shown) || said.toLowerCase(Locale.ROOT).startsWith(shown + " "))
				|| shown.equals(":") && bits.isEmpty() || shown.isEmpty();
		if (!told) {
			add(Kind.WORD, path, shown, "", List.of(), false, 0);
		}
	}

	private void row(List<Piece> parts, List<Integer> path, int first) {
		for (int i = 0; i < parts.size(); i++) {
			boolean named = parts.get(i) instanceof Piece.Value name && name.shape().sort() == Sort.NAME && i + 1 < parts.size()
					&& isTitle(parts.get(i + 1));
			if (named) {
				// what somebody reads comes before what the text calls it
				last = "title";
				show(parts.get(i + 1), in(path, first + i + 1));
				last = "name";
				show(parts.get(i), in(path, first + i));
				i++;
			} else {
				show(parts.get(i), in(path, first + i));
			}
		}
	}

	static boolean isTitle(Piece piece) {
		return piece instanceof Piece.Maybe maybe && maybe.part() instanceof Shape.Value value && value.sort() == Sort.TEXT;
	}

	private void value(Piece.Value value, List<Integer> path, boolean optional) {
		String text = value.text();
		String shown = switch (value.shape().sort()) {
		case TEXT -> text.isEmpty() ? "" : Texts.unquote(text);
		case REFERENCE -> text.isEmpty() ? "" : knowing.title(value.shape(), Texts.plainName(text), path);
		default -> Texts.plainName(text);
		};
		last = CALLED.getOrDefault(value.shape().feature(), last);
		boolean sentence = value.shape().sort() == Sort.TEXT && !SHORT.contains(value.shape().feature());
		Kind kind = sentence ? Kind.SENTENCE : Kind.valueOf(value.shape().sort().name());
		add(kind, path, shown, text, List.of(), optional, 0);
	}

	private void maybe(Piece.Maybe maybe, List<Integer> path) {
		Shape part = maybe.part();
		if (part instanceof Shape.Word word) {
			if (!word.isSign()) {
				add(Kind.FLAG, path, word.text().replace('_', ' '), maybe.piece().isPresent() ? word.text() : "", List.of(), true, 0);
			}
		} else if (part instanceof Shape.Value value) {
			value(maybe.piece().map(piece -> (Piece.Value) piece).orElse(new Piece.Value(value, "")), in(path, 0), true);
		} else if (part instanceof Shape.Choice choice) {
			Piece.Choice filled = (Piece.Choice) maybe.piece().orElse(Piece.blank(choice));
			choice(filled, in(path, 0), true);
		} else if (maybe.piece().isEmpty()) {
			add(Kind.ADD, path, begin(part), "", List.of(), true, 0);
		} else {
			show(maybe.piece().get(), in(path, 0));
			add(Kind.REMOVE, path, "", "", List.of(), true, 0);
		}
	}

	// ---- choices ---------------------------------------------------------------------------------------------------

	/** Returns the words with which a shape begins, as they are written. */
	static List<String> words(Shape shape) {
		List<String> words = new ArrayList<>();
		for (Shape part : shape instanceof Shape.Row row ? row.parts() : List.of(shape)) {
			if (!(part instanceof Shape.Word word) || word.isSign() && !words.isEmpty()) {
				break;
			}
			if (!word.isSign()) {
				words.add(word.text());
			}
		}
		return words;
	}

	/** Returns the words with which a shape begins, as they are shown. */
	static String begin(Shape shape) {
		boolean range = shape instanceof Shape.Row row && row.parts().get(0) instanceof Shape.Word sign && sign.text().equals("..");
		return range ? SIGNS.get("..") : String.join(" ", words(shape)).replace('_', ' ');
	}

	static String label(Shape option) {
		String words = begin(option);
		Shape.Value first = firstValue(option);
		if (!words.isEmpty() || first == null) {
			return words;
		}
		if (first.sort() == Sort.AMOUNT) {
			return "value";
		}
		return first.type() == null ? Labels.ALTERNATIVES.getOrDefault(first.feature(), first.sort().name().toLowerCase(Locale.ROOT))
				: first.type() == BayPackage.Literals.NAMED_VALUE ? "value" : org.baywright.language.index.Kind.word(first.type());
	}

	static Shape.Value firstValue(Shape shape) {
		if (shape instanceof Shape.Value value) {
			return value;
		}
		if (shape instanceof Shape.Many many) {
			return firstValue(many.item());
		}
		if (shape instanceof Shape.Maybe maybe) {
			return firstValue(maybe.part());
		}
		if (shape instanceof Shape.Row row) {
			return row.parts().stream().map(Bits::firstValue).filter(value -> value != null).findFirst().orElse(null);
		}
		return shape instanceof Shape.Choice choice && !choice.options().isEmpty() ? firstValue(choice.options().get(0)) : null;
	}

	private void choice(Piece.Choice choice, List<Integer> path, boolean optional) {
		List<Option> options = new ArrayList<>();
		if (optional) {
			options.add(new Option(-1, ""));
		}
		List<Shape> all = choice.shape().options();
		List<Integer> fitting = fitting(choice.shape(), path, knowing);
		for (int i = 0; i < all.size(); i++) {
			String label = label(all.get(i));
			boolean offered = i == choice.chosen() || fitting.contains(i) && options.stream().noneMatch(option -> option.label().equals(label))
					&& !isChosenLabel(choice, label);
			if (offered) {
				options.add(new Option(i, label));
			}
		}
		// what is left out by being empty needs no choice of its own
		boolean blank = optional && choice.piece().filter(Bits::isValue).isPresent();
		boolean single = choice.chosen() >= 0 && options.size() == (blank ? 2 : 1);
		if (!single) {
			add(Kind.PICK, path, choice.chosen() < 0 ? "" : label(all.get(choice.chosen())),
					choice.chosen() < 0 ? "" : Integer.toString(choice.chosen()), options, optional, 0);
		}
		if (choice.piece().isPresent()) {
			List<Shape> shapes = all.get(choice.chosen()) instanceof Shape.Row row ? row.parts() : List.of(all.get(choice.chosen()));
			int words = 0;
			while (words < shapes.size() && shapes.get(words) instanceof Shape.Word word && (words == 0 || !word.isSign() || SILENT.contains(word.text()))) {
				last = word.isSign() ? last : word.text().replace('_', ' ');
				words++;
			}
			Piece piece = choice.piece().get();
			if (piece instanceof Piece.Row row) {
				row(row.parts().subList(words, row.parts().size()), in(path, 0), words);
			} else if (words == 0) {
				show(piece, in(path, 0));
			}
		}
	}

	/**
	 * Takes the only way to go on behind a name that is filled in, or behind what was chosen, where that way is a value:
	 * nobody has to choose it first.
	 */
	static Piece withOnlyWays(Piece piece, Knowing knowing) {
		Map<List<Integer>, Integer> picks = new LinkedHashMap<>();
		onlyWays(piece, List.of(), false, knowing, picks);
		Piece now = piece;
		for (Map.Entry<List<Integer>, Integer> pick : picks.entrySet()) {
			now = Pieces.pick(now, pick.getKey(), pick.getValue());
		}
		// behind what was taken there may again be one way only
		return picks.isEmpty() ? now : withOnlyWays(now, knowing);
	}

	private static void onlyWays(Piece piece, List<Integer> path, boolean chosen, Knowing knowing, Map<List<Integer>, Integer> picks) {
		List<Piece> children = piece.children();
		for (int i = 0; i < children.size(); i++) {
			Piece child = children.get(i);
			List<Integer> at = in(path, i);
			boolean named = i > 0 && children.get(i - 1) instanceof Piece.Value name && name.shape().sort() == Sort.REFERENCE && !name.text().isEmpty();
			if ((named || chosen) && child instanceof Piece.Choice choice && choice.chosen() < 0) {
				onlyWay(choice.shape(), at, knowing).ifPresent(option -> picks.put(at, option));
			} else if (named && child instanceof Piece.Maybe maybe && maybe.piece().isEmpty() && maybe.part() instanceof Shape.Choice choice) {
				onlyWay(choice, in(at, 0), knowing).ifPresent(option -> picks.put(in(at, 0), option));
			} else {
				onlyWays(child, at, chosen || piece instanceof Piece.Choice, knowing, picks);
			}
		}
	}

	private static Optional<Integer> onlyWay(Shape.Choice choice, List<Integer> path, Knowing knowing) {
		List<Integer> fitting = fitting(choice, path, knowing);
		boolean value = !fitting.isEmpty() && fitting.stream().allMatch(i -> words(choice.options().get(i)).isEmpty());
		// options of which only one fits are told apart by what is written: a number or a name
		return value && fitting.stream().map(i -> label(choice.options().get(i))).distinct().count() == 1 ? Optional.of(fitting.get(0)) : Optional.empty();
	}

	/** Returns the numbers of the options that fit; a word that may be left out is no way of its own. */
	private static List<Integer> fitting(Shape.Choice choice, List<Integer> path, Knowing knowing) {
		List<Integer> fitting = IntStream.range(0, choice.options().size())
				.filter(i -> isWord(choice.options().get(i)) && knowing.fits(choice.options().get(i), path)).boxed().toList();
		boolean bare = fitting.stream().anyMatch(i -> words(choice.options().get(i)).isEmpty());
		return fitting.stream().filter(i -> !bare || !words(choice.options().get(i)).equals(SPARED)).toList();
	}

	private static boolean isChosenLabel(Piece.Choice choice, String label) {
		return choice.chosen() >= 0 && label(choice.shape().options().get(choice.chosen())).equals(label);
	}

	/** Returns whether it is a value alone, or a choice between ways to write one. */
	private static boolean isValue(Piece piece) {
		return piece instanceof Piece.Value || piece.children().stream().filter(part -> !(part instanceof Piece.Maybe)).allMatch(Bits::isValue)
				&& piece.children().stream().anyMatch(part -> !(part instanceof Piece.Maybe));
	}

	/** A sign such as {@code <} has a word that says the same. */
	private static boolean isWord(Shape option) {
		Shape first = option instanceof Shape.Row row ? row.parts().get(0) : option;
		return !(first instanceof Shape.Word word) || !word.isSign();
	}

	// ---- lists -----------------------------------------------------------------------------------------------------

	/** Returns whether a thing of a list needs a row of its own. */
	private static boolean isLong(Shape item) {
		if (item instanceof Shape.Value value) {
			return value.sort() == Sort.TEXT;
		}
		return item instanceof Shape.Choice || item instanceof Shape.Row row && row.parts().size() > 1;
	}

	private void many(Piece.Many many, List<Integer> path) {
		boolean rows = isLong(many.shape().item());
		String of = last;
		int size = many.items().size();
		for (int i = 0; i < size; i++) {
			List<Integer> at = in(path, i);
			if (rows && (i > 0 || !bits.isEmpty() && size > 1)) {
				add(Kind.ROW, at, "", "", List.of(), false, 1);
			}
			last = counted(of, i, size);
			show(many.items().get(i), at);
			last = counted(of, i, size);
			if (rows && i > 0) {
				add(Kind.UP, at, "", "", List.of(), false, 0);
			}
			if (rows && i + 1 < size) {
				add(Kind.DOWN, at, "", "", List.of(), false, 0);
			}
			if (size > Math.max(1, many.shape().least())) {
				add(Kind.REMOVE, at, "", "", List.of(), false, 0);
			}
		}
		last = of;
		if (rows && size > 1) {
			add(Kind.ROW, path, "", "", List.of(), false, 1);
		}
		add(Kind.ADD, path, more(many.shape().item()), "", List.of(), false, 0);
	}

	/** Returns what one thing of a list is called; what the line is called is not said again. */
	private String counted(String of, int i, int size) {
		if (of.isEmpty() || size == 1) {
			return of;
		}
		return of.equalsIgnoreCase(label) || of.equalsIgnoreCase(said) ? Integer.toString(i + 1) : of + " " + (i + 1);
	}

	/** Returns what one more of a list is called: what it names, if it names one thing alone. */
	private static String more(Shape item) {
		Shape.Value value = item instanceof Shape.Choice ? null : firstValue(item);
		if (value == null || value.type() == BayPackage.Literals.NAMED_VALUE) {
			return "another";
		}
		return value.type() == null || value.type() == BayPackage.Literals.SUBJECT ? "more" : org.baywright.language.index.Kind.word(value.type());
	}

	private void group(Piece.Group group, List<Integer> path, int depth) {
		int size = group.items().size();
		if (size > 1 || group.not() || depth > 0) {
			List<Option> options = List.of(new Option(0, ALL), new Option(1, ANY), new Option(2, NOT_ALL), new Option(3, NONE));
			int chosen = (group.any() ? 1 : 0) + (group.not() ? 2 : 0);
			add(Kind.PICK, path, options.get(chosen).label(), Integer.toString(chosen), options, false, 0);
			if (depth > 0) {
				add(Kind.REMOVE, path, "", "", List.of(), false, 0);
			}
		}
		for (int i = 0; i < size; i++) {
			List<Integer> at = in(path, i);
			if (size > 1 || group.not() || depth > 0) {
				add(Kind.ROW, at, "", "", List.of(), false, depth + 1);
			}
			last = size == 1 ? "" : "row " + (i + 1);
			if (group.items().get(i) instanceof Piece.Group inner) {
				group(inner, at, depth + 1);
			} else {
				atom((Piece.Row) group.items().get(i), at);
				if (size > 1) {
					add(Kind.REMOVE, at, "", "", List.of(), false, 0);
				}
			}
		}
		last = "";
		if (size > 1 || depth > 0) {
			add(Kind.ROW, path, "", "", List.of(), false, depth + 1);
		}
		add(Kind.ADD, path, size > 1 || depth > 0 ? "more" : "and", "", List.of(), false, 0);
		if (size > 1 && depth < 2) {
			add(Kind.ADD_GROUP, path, group.any() ? ALL : ANY, "", List.of(), false, 0);
		}
	}

	/** A row of a condition; that it is denied as a whole is shown where somebody wrote it so. */
	private void atom(Piece.Row row, List<Integer> path) {
		boolean denied = ((Piece.Maybe) row.parts().get(0)).piece().isPresent();
		row(row.parts().subList(denied ? 0 : 1, row.parts().size()), path, denied ? 0 : 1);
	}
}
