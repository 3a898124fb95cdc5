package org.baywright.workbench.editor.card;

import java.util.List;
import java.util.Map;
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

	/** Of a text that another program has changed only kind and title tell which element is meant. */
	private record Kept(Position place, String kind, String title, Left left) {

		boolean isOf(String otherKind, String otherTitle, int offset, int length) {
			return place.isDeleted() ? kind.equals(otherKind) && title.equals(otherTitle) : place.offset >= offset && place.offset < offset + length;
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
		for (Kept kept : written) {
			if (kept.isOf(card.kind(), card.title(), card.offset(), card.length())) {
				written.remove(kept);
				return kept.left();
			}
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
		return written.stream().anyMatch(kept -> kept.isOf(item.kind(), item.title(), item.offset(), item.length()));
	}

	/** Returns the elements of which nothing is written yet. */
	List<Card.Item> fresh() {
		return fresh.keySet().stream().map(kind -> new Card.Item(kind, newCard(kind), -1, 0)).toList();
	}

	static String newCard(String kind) {
		return CardMessages.bind(CardMessages.NewCard, Labels.element(kind));
	}
}
