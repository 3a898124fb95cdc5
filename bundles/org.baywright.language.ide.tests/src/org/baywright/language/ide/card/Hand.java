package org.baywright.language.ide.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;

/** Somebody who fills in a card, without a screen. */
final class Hand {

	private static final LocalDate TODAY = LocalDate.of(2026, 4, 1);

	private final EditorServices services;
	private int offset;
	private String kind = "";
	private Drafts drafts = Drafts.NONE;
	String refused = "";

	/** @param marked a text with one {@code @} in the element whose card is filled in */
	Hand(String marked) {
		Cursor cursor = Cursor.in(marked);
		services = cursor.services();
		offset = cursor.offset();
	}

	String text() {
		return services.project().source(Cursor.FILE).orElseThrow().text();
	}

	Card card() {
		return (kind.isEmpty() ? services.card(Cursor.FILE, offset, drafts, Optional.empty()) : services.blankCard(Cursor.FILE, kind, drafts)).orElseThrow();
	}

	Card.Field field(String label) {
		return card().fields().stream().filter(field -> field.label().equals(label)).findFirst()
				.orElseThrow(() -> new AssertionError("no " + label + " among " + card().fields().stream().map(Card.Field::label).toList()));
	}

	/** Returns the bits of a field that are of a kind, or that can be filled in if no kind is given. */
	private List<Spot> bits(String label, Bit.Kind kind) {
		List<Spot> found = new ArrayList<>();
		for (Line line : field(label).lines()) {
			for (Bit bit : line.bits()) {
				if (kind == null ? List.of("TEXT", "SENTENCE", "NUMBER", "AMOUNT", "DATE", "UNIT", "PLAIN", "NAME", "REFERENCE").contains(bit.kind().name())
						: bit.kind() == kind) {
					found.add(new Spot(line, bit));
				}
			}
		}
		return found;
	}

	private record Spot(Line line, Bit bit) {
	}

	/** Types into one of the boxes of a field, counted from 0. */
	Hand fill(String label, int number, String typed) {
		Spot spot = bits(label, null).get(number);
		List<Change.Named> known = spot.bit().kind() == Bit.Kind.REFERENCE ? services.cardChoices(card(), spot.line().key(), spot.bit().path()) : List.of();
		return change(spot.line().key(), new Change.Fill(spot.bit().path(), typed, known));
	}

	/** Returns what one of the boxes of a field shows. */
	String shown(String label, int number) {
		return bits(label, null).get(number).bit().value();
	}

	/** Returns what one of the choices of a field offers. */
	List<String> offered(String label, int number) {
		return bits(label, Bit.Kind.PICK).get(number).bit().options().stream().map(Bit.Option::label).toList();
	}

	/** Returns the titles that fit into one of the boxes of a field. */
	List<String> titles(String label, int number) {
		Spot spot = bits(label, null).get(number);
		return services.cardChoices(card(), spot.line().key(), spot.bit().path()).stream().filter(one -> !one.isFresh()).map(Change.Named::title).toList();
	}

	Hand pick(String label, int number, String option) {
		Spot spot = bits(label, Bit.Kind.PICK).get(number);
		int chosen = spot.bit().options().stream().filter(each -> each.label().equals(option)).findFirst()
				.orElseThrow(() -> new AssertionError("no " + option + " among " + spot.bit().options())).number();
		return change(spot.line().key(), new Change.Pick(spot.bit().path(), chosen));
	}

	/** Presses one of the buttons of a field. */
	Hand press(String label, Bit.Kind button, int number) {
		Spot spot = bits(label, button).get(number);
		List<Integer> path = spot.bit().path();
		return change(spot.line().key(), switch (button) {
		case ADD -> new Change.Add(path);
		case ADD_GROUP -> new Change.AddGroup(path);
		case REMOVE -> new Change.Remove(path);
		case UP -> new Change.Move(path, -1);
		case DOWN -> new Change.Move(path, 1);
		case FLAG -> new Change.Pick(path, spot.bit().written().isEmpty() ? 1 : 0);
		default -> throw new AssertionError(button);
		});
	}

	/** Begins one more line of a field. */
	Hand more(String label) {
		drafts = services.cards().begin(card(), field(label), drafts);
		return this;
	}

	Hand delete(String label, int line) {
		return change(field(label).lines().get(line).key(), new Change.Delete());
	}

	Hand up(String label, int line) {
		return change(field(label).lines().get(line).key(), new Change.MoveLine(-1));
	}

	Hand deleteElement() {
		return apply(services.cards().delete(card()));
	}

	/** Begins an element. */
	Hand begin(String what) {
		kind = what;
		return this;
	}

	Hand duplicate() {
		return apply(services.cards().duplicate(card()).stream().toList());
	}

	/** Adds what is not there yet and names it in one of the boxes of a field. */
	Hand add(String label, int number, String kind, String title) {
		Spot spot = bits(label, null).get(number);
		Card card = card();
		return done(card, services.cardAdding(card, spot.line().key(), spot.bit().path(), kind, title, drafts, TODAY));
	}

	/** Returns the kinds of what can be added in one of the boxes of a field. */
	List<String> addable(String label, int number) {
		Spot spot = bits(label, null).get(number);
		return services.cardChoices(card(), spot.line().key(), spot.bit().path()).stream().filter(Change.Named::isFresh).map(Change.Named::title).toList();
	}

	private Hand change(String line, Change change) {
		Card card = card();
		return done(card, services.cards().change(card, line, change, drafts, TODAY));
	}

	private Hand done(Card card, Cards.Outcome outcome) {
		refused = outcome.refused();
		drafts = outcome.drafts();
		if (card.isNew() && !outcome.edits().isEmpty()) {
			TextEdit edit = outcome.edits().get(0);
			kind = "";
			offset = edit.offset() + edit.text().length() - edit.text().stripLeading().length();
		}
		return apply(outcome.edits());
	}

	private Hand apply(List<TextEdit> edits) {
		services.project().update(Cursor.FILE, Edits.apply(text(), edits));
		return this;
	}
}
