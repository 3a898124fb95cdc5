package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.ide.text.Word;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;

/** Finds shapes in words. Several readings are tried, the longest first. */
final class Matching {

	private final String text;
	private final List<Word> words;

	/**
	 * @param text the text
	 * @param words its words without the comments
	 */
	Matching(String text, List<Word> words) {
		this.text = text;
		this.words = words;
	}

	/** What was read, and the number of the first word behind it. */
	record Read(Piece piece, int end) {
	}

	/** Returns the longest reading that begins with a word. */
	Optional<Read> longest(Shape shape, int at) {
		return read(shape, at).stream().max(Comparator.comparingInt(Read::end));
	}

	/** Returns the reading from one word up to another. */
	Optional<Read> exactly(Shape shape, int from, int to) {
		return read(shape, from).stream().filter(read -> read.end() == to).findFirst();
	}

	private List<Read> read(Shape shape, int at) {
		if (shape instanceof Shape.Word word) {
			return is(at, word.text()) ? List.of(new Read(new Piece.Word(word.text()), at + 1)) : List.of();
		}
		if (shape instanceof Shape.Value value) {
			return ends(value.rule(), at).stream().distinct().sorted(Comparator.reverseOrder()).filter(end -> end > at)
					.map(end -> new Read(new Piece.Value(value, written(at, end)), end)).toList();
		}
		if (shape instanceof Shape.Row row) {
			List<Read> found = new ArrayList<>();
			row(row, 0, at, new ArrayList<>(), found);
			return found;
		}
		if (shape instanceof Shape.Maybe maybe) {
			List<Read> found = new ArrayList<>();
			read(maybe.part(), at).forEach(read -> found.add(new Read(new Piece.Maybe(maybe.part(), Optional.of(read.piece())), read.end())));
			found.add(new Read(new Piece.Maybe(maybe.part(), Optional.empty()), at));
			return found;
		}
		if (shape instanceof Shape.Choice choice) {
			List<Read> found = new ArrayList<>();
			for (int i = 0; i < choice.options().size(); i++) {
				int chosen = i;
				read(choice.options().get(i), at)
						.forEach(read -> found.add(new Read(new Piece.Choice(choice, chosen, Optional.of(read.piece())), read.end())));
			}
			return found;
		}
		if (shape instanceof Shape.Many many) {
			return many(many, at);
		}
		Shape.Condition condition = (Shape.Condition) shape;
		return either(condition, at, false).map(List::of).orElse(List.of());
	}

	private void row(Shape.Row row, int part, int at, List<Piece> before, List<Read> found) {
		if (part == row.parts().size()) {
			found.add(new Read(new Piece.Row(before), at));
			return;
		}
		for (Read read : read(row.parts().get(part), at)) {
			before.add(read.piece());
			row(row, part + 1, read.end(), before, found);
			before.remove(before.size() - 1);
		}
	}

	/** As many as there are; fewer, or shorter ones, only if what follows could not be read otherwise. */
	private List<Read> many(Shape.Many many, int at) {
		SortedMap<Integer, List<Piece>> ways = new TreeMap<>(Comparator.reverseOrder());
		many(many, at, List.of(), ways);
		List<Read> found = new ArrayList<>();
		ways.forEach((end, items) -> {
			if (items.size() >= many.least()) {
				found.add(new Read(new Piece.Many(many, items), end));
			}
		});
		if (many.least() == 0) {
			found.add(new Read(new Piece.Many(many, List.of()), at));
		}
		return found;
	}

	private void many(Shape.Many many, int at, List<Piece> before, SortedMap<Integer, List<Piece>> ways) {
		boolean separated = !before.isEmpty() && !many.separator().isEmpty();
		if (separated && !is(at, many.separator())) {
			return;
		}
		int from = separated ? at + 1 : at;
		read(many.item(), from).stream().sorted(Comparator.comparingInt(Read::end).reversed()).forEach(read -> {
			if (read.end() > from && !ways.containsKey(read.end())) {
				List<Piece> items = new ArrayList<>(before);
				items.add(read.piece());
				ways.put(read.end(), items);
				many(many, read.end(), items, ways);
			}
		});
	}

	// ---- conditions ------------------------------------------------------------------------------------------------

	private Optional<Read> either(Shape.Condition shape, int at, boolean enclosed) {
		Optional<Read> first = both(shape, at);
		if (first.isEmpty() || !is(first.get().end(), "or")) {
			return first.map(read -> enclosed ? enclosed(read) : read);
		}
		List<Piece> items = new ArrayList<>();
		List<String> joins = new ArrayList<>();
		items.add(single(first.get().piece()));
		int next = first.get().end();
		while (is(next, "or")) {
			Optional<Read> more = both(shape, next + 1);
			if (more.isEmpty()) {
				return Optional.empty();
			}
			items.add(single(more.get().piece()));
			joins.add("or");
			next = more.get().end();
		}
		return Optional.of(new Read(new Piece.Group(shape, true, false, enclosed, items, joins), next));
	}

	private static Read enclosed(Read read) {
		Piece.Group group = (Piece.Group) read.piece();
		return new Read(new Piece.Group(group.shape(), group.any(), group.not(), true, group.items(), group.joins()), read.end());
	}

	/** One row needs no group around it. */
	private static Piece single(Piece piece) {
		return piece instanceof Piece.Group group && !group.enclosed() && !group.not() && group.items().size() == 1 ? group.items().get(0) : piece;
	}

	private Optional<Read> both(Shape.Condition shape, int at) {
		Optional<Read> first = primary(shape, at);
		if (first.isEmpty()) {
			return first;
		}
		List<Piece> items = new ArrayList<>(List.of(first.get().piece()));
		List<String> joins = new ArrayList<>();
		int next = first.get().end();
		while (is(next, ",") || is(next, "and")) {
			Optional<Read> more = primary(shape, next + 1);
			if (more.isEmpty()) {
				return Optional.empty();
			}
			joins.add(words.get(next).text());
			items.add(more.get().piece());
			next = more.get().end();
		}
		return Optional.of(new Read(new Piece.Group(shape, false, false, false, items, joins), next));
	}

	private Optional<Read> primary(Shape.Condition shape, int at) {
		boolean not = is(at, "not");
		int from = not ? at + 1 : at;
		if (!is(from, "(")) {
			return longest(shape.atom(), at);
		}
		return either(shape, from + 1, true).filter(read -> is(read.end(), ")")).map(read -> {
			Piece.Group group = (Piece.Group) read.piece();
			return new Read(new Piece.Group(shape, group.any(), not, true, group.items(), group.joins()), read.end() + 1);
		});
	}

	// ---- values ----------------------------------------------------------------------------------------------------

	private boolean is(int at, String word) {
		return at < words.size() && words.get(at).kind() == Word.Kind.KEYWORD && words.get(at).text().equals(word);
	}

	private String written(int from, int to) {
		String between = text.substring(words.get(from).offset(), words.get(to - 1).end());
		return between.contains("//") || between.contains("/*") ? Writing.join(words.subList(from, to).stream().map(Word::text).toList()) : between;
	}

	private List<Integer> ends(AbstractRule rule, int at) {
		if (!(rule instanceof TerminalRule)) {
			return ends(rule.getAlternatives(), at);
		}
		if (at >= words.size()) {
			return List.of();
		}
		Word word = words.get(at);
		boolean fits = switch (rule.getName()) {
		case "STRING" -> word.kind() == Word.Kind.STRING && word.text().length() > 1 && word.text().endsWith("\"");
		case "NUMBER" -> word.kind() == Word.Kind.NUMBER;
		case "ID" -> word.kind() == Word.Kind.NAME;
		default -> false;
		};
		return fits ? List.of(at + 1) : List.of();
	}

	private List<Integer> ends(AbstractElement element, int at) {
		List<Integer> found = new ArrayList<>(once(element, at));
		if (GrammarUtil.isMultipleCardinality(element)) {
			for (int i = 0; i < found.size(); i++) {
				int from = found.get(i);
				once(element, from).stream().filter(end -> end > from && !found.contains(end)).forEach(found::add);
			}
		}
		if (GrammarUtil.isOptionalCardinality(element)) {
			found.add(at);
		}
		return found;
	}

	private List<Integer> once(AbstractElement element, int at) {
		if (element instanceof Keyword keyword) {
			return is(at, keyword.getValue()) ? List.of(at + 1) : List.of();
		}
		if (element instanceof RuleCall call) {
			return ends(call.getRule(), at);
		}
		if (element instanceof Assignment assignment) {
			return ends(assignment.getTerminal(), at);
		}
		if (element instanceof Alternatives choice) {
			return choice.getElements().stream().flatMap(each -> ends(each, at).stream()).toList();
		}
		if (element instanceof Group group) {
			List<Integer> from = List.of(at);
			for (AbstractElement part : group.getElements()) {
				from = from.stream().flatMap(each -> ends(part, each).stream()).distinct().toList();
			}
			return from;
		}
		return List.of(at);
	}
}
