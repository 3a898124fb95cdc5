package org.baywright.workbench.editor.card;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;

import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Drafts;
import org.baywright.language.ide.card.Labels;
import org.baywright.workbench.Baywright;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;

/**
 * What was begun on cards that are not shown just now, and what was typed there and cannot be written, for each element, as
 * long as the editor is open. What it holds may be asked for on any thread.
 */
final class KeptDrafts {

	/**
	 * What one card keeps.
	 *
	 * @param refused what was typed and cannot be written, by its place on the card
	 */
	record Left(Drafts drafts, Map<String, String> refused) {

		static final Left NOTHING = new Left(Drafts.NONE, Map.of());

		boolean isBlank() {
			return drafts.isBlank() && refused.isEmpty();
		}
	}

	/** Where it stands tells which element is meant; of a text that another program has changed only kind and title do. */
	private record Kept(Position place, String kind, String title, Left left) {

		boolean isIn(int offset, int length) {
			return !place.isDeleted() && place.offset >= offset && place.offset < offset + length;
		}
	}

	private final List<Kept> written = new CopyOnWriteArrayList<>();
	private final Map<String, Left> fresh = new ConcurrentSkipListMap<>();

	/** Returns a place that moves with the text. */
	static Position position(IDocument document, int offset) {
		Position place = new Position(Math.min(offset, document.getLength()), 0);
		try {
			document.addPosition(place);
		} catch (BadLocationException e) {
			Baywright.log("A card has no place in its text.", e);
		}
		return place;
	}

	void keep(IDocument document, Card card, int offset, Left left) {
		if (document == null || left.isBlank()) {
			return;
		}
		if (card.isNew()) {
			fresh.put(card.kind(), left);
		} else {
			written.add(new Kept(position(document, offset), card.kind(), card.title(), left));
		}
	}

	/** Returns what was left on the card of an element, and forgets it. */
	Left take(Card card) {
		if (card.isNew()) {
			Left begun = fresh.remove(card.kind());
			return begun == null ? Left.NOTHING : begun;
		}
		Optional<Kept> found = of(card.kind(), card.title(), card.offset(), card.length());
		if (found.isPresent()) {
			written.remove(found.get());
			return found.get().left();
		}
		return Left.NOTHING;
	}

	/** Returns what was typed and cannot be written. */
	Stream<String> refused() {
		return Stream.concat(fresh.values().stream(), written.stream().map(Kept::left)).flatMap(left -> left.refused().values().stream());
	}

	/** Returns the elements, in words, on whose cards a line is begun. */
	Stream<String> begun() {
		return Stream.concat(fresh.entrySet().stream().filter(each -> !each.getValue().drafts().isBlank()).map(each -> newCard(each.getKey())),
				written.stream().filter(kept -> !kept.left().drafts().isBlank()).map(kept -> kept.title()));
	}

	/** Returns whether something was begun of an element. */
	boolean has(Card.Item item) {
		return of(item.kind(), item.title(), item.offset(), item.length()).isPresent();
	}

	private Optional<Kept> of(String kind, String title, int offset, int length) {
		List<Kept> alike = written.stream().filter(kept -> kept.kind().equals(kind)).toList();
		return alike.stream().filter(kept -> kept.isIn(offset, length)).findFirst()
				.or(() -> alike.stream().filter(kept -> kept.title().equals(title)).findFirst());
	}

	/** Returns the elements of which nothing is written yet. */
	List<Card.Item> fresh() {
		return fresh.keySet().stream().map(kind -> new Card.Item(kind, newCard(kind), -1, 0)).toList();
	}

	static String newCard(String kind) {
		return CardMessages.bind(CardMessages.NewCard, Labels.element(kind));
	}
}
