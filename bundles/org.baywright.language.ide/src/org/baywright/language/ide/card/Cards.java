package org.baywright.language.ide.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.baywright.analysis.Report;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.conversion.Texts;
import org.baywright.language.ide.complete.Completion;
import org.baywright.language.ide.complete.Skeleton;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.Spelled;
import org.baywright.language.ide.text.LineEnds;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.vocabulary.Clause;
import org.baywright.language.vocabulary.Element;
import org.baywright.language.vocabulary.Vocabulary;
import org.baywright.model.Problem;
import org.baywright.model.words.Names;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.xtext.Grammar;

/** Makes cards of elements, and changes of the text of what is done on a card. */
public final class Cards {

	static final String HEAD = "head";
	/** What one line of a field is called that has no name for it. */
	private static final String LINE = "line";
	/** The head of an element that is not written yet. */
	static final String NEW = HEAD + "/new";

	private final Map<String, Form> forms;
	private final Fitting fitting;
	private final Set<String> usual = new HashSet<>();

	/**
	 * @param grammar the grammar
	 * @param completion what can be written at a place
	 */
	public Cards(Grammar grammar, Completion completion) {
		forms = Form.all(grammar);
		fitting = new Fitting(completion);
		List<String> begun = completion.templates().stream().map(Skeleton::text).toList();
		forms.values().forEach(form -> form.element().clauses().stream().filter(clause -> isUsual(form.element().word(), clause, begun))
				.forEach(clause -> usual.add(form.element().word() + " " + clause.words())));
	}

	/** Returns the words of the kinds of elements that can be added, in their usual order. */
	public List<String> kinds() {
		return forms.values().stream().map(form -> form.element().word()).toList();
	}

	Map<String, Form> forms() {
		return forms;
	}

	// ---- reading ---------------------------------------------------------------------------------------------------

	/** Returns the elements of a text. */
	public List<Card.Item> items(String text) {
		List<Word> all = Words.of(text).stream().filter(word -> word.kind() != Word.Kind.COMMENT).toList();
		List<Card.Item> items = new ArrayList<>();
		for (int[] place : Sheet.places(text, all)) {
			List<Word> words = all.subList(place[0], place[1]);
			Form.beginning(forms, words.get(0), new Matching(text, words), 0).ifPresent(form -> items.add(new Card.Item(form.element().word(),
					title(words), words.get(0).offset(), words.get(words.size() - 1).end() - words.get(0).offset())));
		}
		return items;
	}

	/** The first text of the head says most; else its first name. */
	private static String title(List<Word> words) {
		List<Word> head = words.stream().skip(1).takeWhile(word -> !word.is("{")).toList();
		return head.stream().filter(word -> word.kind() == Word.Kind.STRING).findFirst().map(word -> Texts.unquote(word.text()))
				.or(() -> head.stream().filter(word -> word.isWord() && !word.is("family")).findFirst().map(word -> Texts.plainName(word.text()))).orElse("");
	}

	/**
	 * Returns the card of the element at a place.
	 *
	 * @param index names of the project
	 * @param file path relative to the project
	 * @param text its text
	 * @param offset the place
	 * @param drafts what was begun and cannot be written yet
	 * @param problems what is wrong in the texts
	 * @param report what the check found in this text
	 */
	public Optional<Card> card(ProjectIndex index, String file, String text, int offset, Drafts drafts, List<Problem> problems,
			Optional<Report> report) {
		return Sheet.at(forms, text, offset).map(sheet -> {
			Troubles troubles = new Troubles(file, sheet, problems, report);
			return sheet.isReadable() ? card(index, file, sheet, drafts, troubles) : unread(file, sheet, troubles);
		});
	}

	private static Card unread(String file, Sheet sheet, Troubles troubles) {
		int line = (int) sheet.text().substring(0, sheet.offset()).chars().filter(c -> c == '\n').count() + 1;
		int at = troubles.firstError().orElse(sheet.offset());
		String why = "This " + sheet.form().element().word() + ", in line " + line
				+ ", cannot be read, so it cannot be shown as a card. Put it right in the text.";
		return new Card(file, sheet.text(), sheet.form().element().word(), title(sheet.words()), sheet.offset(), sheet.end() - sheet.offset(),
				List.of(), Optional.of(new Card.Unread(why, at)), troubles.all(), Set.of());
	}

	/** Returns the card of an element that is not written yet. */
	public Optional<Card> blank(ProjectIndex index, String file, String text, String kind, Drafts drafts) {
		return formOf(kind).map(form -> {
			Sheet sheet = Sheet.blank(form, text);
			return new Card(file, text, kind, "", -1, 0, heads(index, sheet, drafts, Troubles.NONE), Optional.empty(), List.of(), taken(index, sheet));
		});
	}

	private Card card(ProjectIndex index, String file, Sheet sheet, Drafts drafts, Troubles troubles) {
		List<Card.Field> fields = new ArrayList<>(heads(index, sheet, drafts, troubles));
		Form form = sheet.form();
		for (int i = 0; i < form.clauses().size(); i++) {
			fields.add(clauses(index, sheet, i, drafts, troubles));
		}
		int unread = 0;
		for (Sheet.Part part : sheet.clauses()) {
			if (part.clause() == Sheet.UNREAD) {
				String key = "unread/" + unread++;
				String written = sheet.text().substring(part.offset(), part.end());
				Bit bit = new Bit(Bit.Kind.FREE, List.of(), "As written", written, written, List.of(), false, 0);
				fields.add(new Card.Field("As written", "", LINE, true, false, List.of(new Line(key, Sheet.UNREAD, Optional.empty(), Optional.of(part),
						List.of(bit), troubles.of(part.offset(), part.end()), false))));
			}
		}
		return new Card(file, sheet.text(), form.element().word(), title(sheet.words()), sheet.offset(), sheet.end() - sheet.offset(),
				fields, Optional.empty(), troubles.left(), taken(index, sheet));
	}

	private List<Card.Field> heads(ProjectIndex index, Sheet sheet, Drafts drafts, Troubles troubles) {
		List<Card.Field> fields = new ArrayList<>();
		Piece.Row base = (Piece.Row) sheet.head().orElseThrow();
		boolean fresh = sheet.words().isEmpty();
		String word = sheet.form().element().word();
		for (Form.Head head : sheet.form().fields()) {
			String key = fresh ? HEAD : HEAD + "/" + head.from();
			Optional<Piece> begun = drafts.of(fresh ? NEW : key, fresh ? "" : Writing.line(base));
			Piece.Row piece = (Piece.Row) begun.orElse(base);
			// what may be left out is shown with what there would be to fill in
			Piece.Row shown = new Piece.Row(piece.parts().stream().map(Cards::opened).toList());
			List<Bit> bits = new Bits(fitting.knowing(index, sheet, key, shown), word, head.label()).parts(shown, head.from(), head.to());
			int[] span = span(sheet, base, head);
			boolean optional = head.from() > 0 && base.parts().get(head.from()) instanceof Piece.Maybe && !head.label().equals("Title");
			fields.add(new Card.Field(Labels.field(word, head.label()), Vocabulary.help(head.word()).orElse(""), LINE, !optional, false,
					List.of(new Line(fresh ? NEW + "/" + head.from() : key, Sheet.UNREAD, Optional.of(shown), Optional.empty(), bits,
							troubles.of(span[0], span[1]), !fresh && begun.isPresent()))));
		}
		// who fills a card in begins with the title
		int title = -1;
		for (int i = 0; i < fields.size(); i++) {
			title = fields.get(i).label().equals("Title") ? i : title;
		}
		if (title > 0 && fields.get(title - 1).label().equals("Name")) {
			Collections.swap(fields, title, title - 1);
		}
		return fields;
	}

	private static Piece opened(Piece part) {
		boolean closed = part instanceof Piece.Maybe maybe && maybe.piece().isEmpty() && !(maybe.part() instanceof Shape.Word);
		return closed ? new Piece.Maybe(((Piece.Maybe) part).part(), Optional.of(Piece.blank(((Piece.Maybe) part).part()))) : part;
	}

	private static int[] span(Sheet sheet, Piece.Row base, Form.Head head) {
		if (sheet.words().isEmpty()) {
			return new int[] { -1, -1 };
		}
		int from = Words.of(Writing.line(new Piece.Row(base.parts().subList(0, head.from())))).size();
		int to = Words.of(Writing.line(new Piece.Row(base.parts().subList(0, head.to())))).size();
		boolean there = from < to && to <= sheet.words().size();
		return there ? new int[] { sheet.words().get(from).offset(), sheet.words().get(to - 1).end() } : new int[] { -1, -1 };
	}

	private Card.Field clauses(ProjectIndex index, Sheet sheet, int clause, Drafts drafts, Troubles troubles) {
		Element element = sheet.form().element();
		Clause words = element.clauses().get(clause);
		String label = sheet.form().label(clause);
		List<Line> lines = new ArrayList<>();
		int number = 0;
		for (Sheet.Part part : sheet.clauses()) {
			if (part.clause() == clause) {
				String key = clause + "/" + number++;
				Optional<Piece> begun = drafts.of(key, sheet.text().substring(part.offset(), part.end()));
				Offered shown = offered(index, sheet, key, begun.orElse(part.piece().orElseThrow()));
				lines.add(new Line(key, clause, Optional.of(shown.piece()), Optional.of(part), new Bits(shown.knowing(), element.word(), label).all(shown.piece()),
						troubles.of(part.offset(), part.end()), begun.isPresent()));
			}
		}
		String key = clause + "/" + number;
		Optional<Piece> begun = drafts.of(key, "");
		if (lines.isEmpty() || begun.isPresent()) {
			Offered shown = offered(index, sheet, key, begun.orElse(filled(Piece.blank(sheet.form().clauses().get(clause)))));
			lines.add(new Line(key, clause, Optional.of(shown.piece()), Optional.empty(), new Bits(shown.knowing(), element.word(), label).all(shown.piece()),
					List.of(), begun.filter(draft -> !draft.isBlank()).isPresent()));
		}
		String help = words.words().size() == 1 ? Labels.help(element.word(), label, words.words().get(0)) : "";
		String one = words.part().isEmpty() ? LINE : label.toLowerCase(Locale.ROOT);
		return new Card.Field(Labels.field(element.word(), label), help, one, usual.contains(element.word() + " " + words.words()), begun.isEmpty() && lines.stream().anyMatch(Line::isClause)
				&& words.times() == Clause.Times.MANY && !(words.part().isEmpty() && isList(sheet.form().clauses().get(clause))), lines);
	}

	/** What is shown of a line, with what is known of it: asking what fits costs a completion for each choice. */
	private record Offered(Piece piece, Bits.Knowing knowing) {
	}

	private Offered offered(ProjectIndex index, Sheet sheet, String key, Piece written) {
		Bits.Knowing knowing = fitting.knowing(index, sheet, key, written);
		Piece piece = Bits.withOnlyWays(written, knowing);
		return new Offered(piece, piece == written ? knowing : fitting.knowing(index, sheet, key, piece));
	}

	/** What is a list itself grows within its line. */
	private static boolean isList(Shape shape) {
		return shape instanceof Shape.Row row && row.parts().stream().anyMatch(part -> part instanceof Shape.Many || part instanceof Shape.Condition);
	}

	/** A clause that is a list alone has a first thing, so that there is something to fill in. */
	private static Piece filled(Piece piece) {
		return piece instanceof Piece.Row row ? new Piece.Row(row.parts().stream()
				.map(part -> part instanceof Piece.Many many && many.items().isEmpty() ? Pieces.add(many, List.of()) : part).toList()) : piece;
	}

	/** What usually stands in an element stands in the text that completion begins it with. */
	private static boolean isUsual(String element, Clause clause, List<String> begun) {
		return begun.stream().filter(text -> text.startsWith(element + " ")).anyMatch(text -> Words.of(text).stream().skip(1)
				.anyMatch(word -> clause.words().contains(word.text()) && Words.isFirstInLine(text, word.offset())));
	}

	/** Returns what can be meant at a place of a line: names that fit, with their titles, best first. */
	public List<Change.Named> choices(ProjectIndex index, Card card, String key, List<Integer> path) {
		return card.line(key).flatMap(Line::piece).flatMap(piece -> sheet(card).map(sheet -> fitting.choices(index, sheet, key, piece, path)))
				.orElse(List.of());
	}

	private Optional<Form> formOf(String kind) {
		return forms.values().stream().filter(form -> form.element().word().equals(kind)).findFirst();
	}

	private Optional<Sheet> sheet(Card card) {
		return card.isNew() ? formOf(card.kind()).map(form -> Sheet.blank(form, card.text()))
				: Sheet.at(forms, card.text(), card.offset());
	}

	// ---- changing --------------------------------------------------------------------------------------------------

	/**
	 * What comes of a change.
	 *
	 * @param edits changes of the text; none if nothing changes or something is still missing
	 * @param drafts what is begun from now on
	 * @param refused why it cannot be done, with what to do; empty if it can
	 */
	public record Outcome(List<TextEdit> edits, Drafts drafts, String refused) {
	}

	/**
	 * Does something on a line of a card.
	 *
	 * @param card the card
	 * @param key the line
	 * @param change what is done
	 * @param drafts what was begun before
	 * @param today the day of today
	 */
	public Outcome change(Card card, String key, Change change, Drafts drafts, LocalDate today) {
		Sheet sheet = sheet(card).orElseThrow();
		Line line = card.line(key).orElseThrow();
		Rewriting rewriting = new Rewriting(sheet);
		if (change instanceof Change.Free free) {
			Sheet.Part part = line.part().orElseThrow();
			return new Outcome(List.of(new TextEdit(part.offset(), part.length(), free.text())), drafts, "");
		}
		if (change instanceof Change.Delete) {
			return new Outcome(line.part().map(rewriting::delete).orElse(List.of()), drafts.without(key), "");
		}
		if (change instanceof Change.MoveLine move) {
			List<Sheet.Part> same = sheet.clauses().stream().filter(part -> part.clause() == line.clause()).toList();
			int at = same.indexOf(line.part().orElseThrow());
			int other = at + move.by();
			return new Outcome(other < 0 || other >= same.size() ? List.of() : rewriting.swap(same.get(Math.min(at, other)), same.get(Math.max(at, other))),
					drafts, "");
		}
		Piece piece;
		try {
			piece = changed(line.piece().orElseThrow(), change, card.taken(), today);
		} catch (Filling.Refused e) {
			return new Outcome(List.of(), drafts, e.getMessage());
		}
		return written(card, sheet, line, piece, drafts, rewriting);
	}

	/**
	 * Adds something that is not there yet and names it on a line of a card.
	 *
	 * @param kind the word of its kind
	 * @param title what it is called
	 */
	public Outcome changeAdding(ProjectIndex index, Card card, String key, List<Integer> path, String kind, String title, Drafts drafts, LocalDate today) {
		Form form = formOf(kind).orElseThrow();
		Set<String> taken = taken(index, Sheet.blank(form, card.text()));
		String name = Names.free(Names.suggest(title), taken);
		Piece head = titled(Piece.blank(form.head()), name, title);
		if (name.isEmpty() || !head.isWhole()) {
			return new Outcome(List.of(), drafts, "No name can be made of \u201c" + title + "\u201d. Use letters.");
		}
		Outcome named = change(card, key, new Change.Fill(path, title, List.of(new Change.Named(name, title, ""))), drafts, today);
		TextEdit added = element(card, form, head);
		List<TextEdit> edits = new ArrayList<>(named.edits());
		if (card.isNew() && !edits.isEmpty()) {
			// both stand at the end, and what is named comes first
			String line = LineEnds.of(card.text());
			edits = List.of(TextEdit.insert(added.offset(), added.text() + line + edits.get(0).text().stripLeading()));
		} else {
			edits.add(added);
		}
		return new Outcome(edits, named.drafts(), named.refused());
	}

	/** Fills the name and the title of a head in. */
	private static Piece titled(Piece head, String name, String title) {
		Piece now = head;
		List<Piece> parts = head.children();
		for (int i = 0; i < parts.size(); i++) {
			if (parts.get(i) instanceof Piece.Value value && value.shape().sort() == Shape.Sort.NAME) {
				now = Pieces.fill(now, List.of(i), Spelled.written(name));
			} else if (Bits.isTitle(parts.get(i))) {
				now = Pieces.fill(now, List.of(i, 0), Texts.quote(title));
			} else if (parts.get(i) instanceof Piece.Value value && value.shape().sort() == Shape.Sort.TEXT && !value.text().isEmpty()) {
				now = Pieces.fill(now, List.of(i), Texts.quote(title));
			}
		}
		return Pieces.pruned(now);
	}

	/** Returns what writes another element like it behind it, with a name and a title of its own; nothing if it has neither. */
	public Optional<TextEdit> duplicate(Card card) {
		if (card.isNew() || card.title().isEmpty()) {
			return Optional.empty();
		}
		Set<String> titles = items(card.text()).stream().map(Card.Item::title).collect(Collectors.toSet());
		return sheet(card).filter(Sheet::isReadable).flatMap(sheet -> {
			Piece head = sheet.head().orElseThrow();
			Optional<String> name = head.children().stream().filter(part -> part instanceof Piece.Value value && value.shape().sort() == Shape.Sort.NAME)
					.map(part -> Names.free(Texts.plainName(((Piece.Value) part).text()), card.taken())).findFirst();
			String title = IntStream.iterate(1, i -> i + 1).mapToObj(i -> card.title() + (i == 1 ? " (copy)" : " (copy " + i + ")"))
					.filter(free -> !titles.contains(free)).findFirst().orElseThrow();
			Piece copy = titled(head, name.orElse(""), title);
			if (copy.equals(head)) {
				return Optional.empty();
			}
			String line = LineEnds.of(card.text());
			String rest = card.text().substring(sheet.headEnd(), sheet.end());
			return Optional.of(TextEdit.insert(sheet.end(), line + line + Writing.line(copy) + rest));
		});
	}

	/** Names that conditions speak of share one space, others have one for each kind; within an element no word is given twice. */
	private static Set<String> taken(ProjectIndex index, Sheet sheet) {
		Set<String> taken = new HashSet<>();
		Kind own = Kind.of((EClass) BayPackage.eINSTANCE.getEClassifier(sheet.form().element().rule()));
		for (Kind kind : Kind.values()) {
			if (kind == own || own != null && own.isSubject() && kind.isSubject()) {
				index.all(kind).forEach(symbol -> taken.add(symbol.name()));
			}
		}
		sheet.words().stream().filter(Word::isWord).forEach(word -> taken.add(Texts.plainName(word.text())));
		return taken;
	}

	private static Piece changed(Piece piece, Change change, Set<String> taken, LocalDate today) throws Filling.Refused {
		if (change instanceof Change.Fill fill) {
			return Filling.fill(piece, fill, taken, today);
		}
		if (change instanceof Change.Pick pick) {
			Piece at = Pieces.at(piece, pick.path());
			return at instanceof Piece.Group ? Pieces.group(piece, pick.path(), (pick.option() & 1) == 1, pick.option() >= 2)
					: at instanceof Piece.Maybe maybe && maybe.part() instanceof Shape.Word ? flag(piece, pick) : Pieces.pick(piece, pick.path(), pick.option());
		}
		if (change instanceof Change.Add add) {
			return Pieces.add(piece, add.path());
		}
		if (change instanceof Change.AddGroup add) {
			return Pieces.addGroup(piece, add.path());
		}
		if (change instanceof Change.Remove remove) {
			return Pieces.remove(piece, remove.path());
		}
		Change.Move move = (Change.Move) change;
		return Pieces.move(piece, move.path(), move.by());
	}

	private static Piece flag(Piece piece, Change.Pick pick) {
		return Pieces.with(piece, pick.path(), at -> new Piece.Maybe(((Piece.Maybe) at).part(),
				pick.option() > 0 ? Optional.of(Piece.blank(((Piece.Maybe) at).part())) : Optional.empty()));
	}

	private Outcome written(Card card, Sheet sheet, Line line, Piece piece, Drafts drafts, Rewriting rewriting) {
		String key = line.key();
		Piece pruned = Pieces.pruned(piece);
		boolean head = key.startsWith(HEAD);
		boolean pending = isPending(piece, head);
		if (card.isNew()) {
			return pruned.isWhole() ? new Outcome(List.of(element(card, sheet.form(), pruned)), Drafts.NONE, "")
					: new Outcome(List.of(), drafts.with(NEW, "", piece), "");
		}
		String base = head ? Writing.line(sheet.head().orElseThrow())
				: line.part().map(part -> card.text().substring(part.offset(), part.end())).orElse("");
		if (!pruned.isWhole()) {
			boolean gone = !head && !pending && pruned.isBlank();
			return gone ? new Outcome(line.part().map(rewriting::delete).orElse(List.of()), drafts.without(key), "")
					: new Outcome(List.of(), drafts.with(key, base, piece), "");
		}
		List<TextEdit> edits = head ? rewriting.head(pruned)
				: line.part().map(part -> rewriting.clause(part, pruned)).orElseGet(() -> rewriting.add(line.clause(), pruned));
		// a row that is still empty stays on the card while the others are written
		String now = head ? Writing.line(pruned) : after(base, line, edits, pruned);
		return new Outcome(edits, pending ? drafts.with(key, now, piece) : drafts.without(key), "");
	}

	/** Returns what stands in the text for a line after changes of it. */
	private static String after(String base, Line line, List<TextEdit> edits, Piece written) {
		return line.part().map(part -> Edits.apply(base, edits.stream()
				.map(edit -> new TextEdit(edit.offset() - part.offset(), edit.length(), edit.text())).toList())).orElseGet(() -> Writing.line(written));
	}

	/** Returns whether something was added that is still empty; what the card itself holds open in a head does not count. */
	private static boolean isPending(Piece piece, boolean head) {
		boolean empty = piece instanceof Piece.Maybe maybe && maybe.piece().filter(Piece::isBlank).isPresent()
				|| Pieces.isList(piece) && piece.children().size() > 1 && piece.children().stream().anyMatch(Piece::isBlank);
		return empty || piece.children().stream().filter(child -> !(head && child instanceof Piece.Maybe && child.isBlank()))
				.anyMatch(child -> isPending(child, false));
	}

	private static TextEdit element(Card card, Form form, Piece head) {
		String text = card.text();
		String line = LineEnds.of(text);
		String written = Writing.line(head) + (form.clauses().isEmpty() || form.bare() ? "" : " {" + line + "}") + line;
		String between = text.isBlank() || text.endsWith(line + line) ? "" : text.endsWith("\n") ? line : line + line;
		return TextEdit.insert(text.length(), between + written);
	}

	/** Returns where what is filled in at a place of a line stands in the text; -1 if it does not. */
	public int place(Card card, String key, List<Integer> path) {
		Sheet sheet = sheet(card).orElseThrow();
		Line line = card.line(key).orElseThrow();
		if (!line.isInText() || line.isDraft()) {
			return -1;
		}
		int from = line.part().map(Sheet.Part::offset).orElse(sheet.offset());
		int before = Words.of(Writing.before(line.piece().orElseThrow(), path)).size();
		List<Word> words = sheet.words().stream().filter(word -> word.offset() >= from).toList();
		return before < words.size() ? words.get(before).offset() : -1;
	}

	/** Begins one more line of a field. */
	public Drafts begin(Card card, Card.Field field, Drafts drafts) {
		Line last = field.lines().get(field.lines().size() - 1);
		Sheet sheet = sheet(card).orElseThrow();
		int number = Integer.parseInt(last.key().substring(last.key().indexOf('/') + 1));
		return drafts.with(last.clause() + "/" + (number + 1), "", filled(Piece.blank(sheet.form().clauses().get(last.clause()))));
	}

	/** Returns what takes the element away, with the comment that stands directly on it. */
	public List<TextEdit> delete(Card card) {
		return sheet(card).map(sheet -> new Rewriting(sheet).deleteAll()).orElse(List.of());
	}
}
