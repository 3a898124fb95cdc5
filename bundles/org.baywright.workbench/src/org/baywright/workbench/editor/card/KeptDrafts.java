package org.baywright.workbench.editor.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Drafts;
import org.baywright.language.ide.card.Labels;
import org.baywright.workbench.Baywright;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;

/** What was begun on cards that are not shown just now, for each element, as long as the editor is open. */
final class KeptDrafts {

	/** Of a text that another program has changed only kind and title tell which element is meant. */
	private record Kept(Position place, String kind, String title, Drafts drafts) {

		boolean isOf(String otherKind, String otherTitle, int offset, int length) {
			return place.isDeleted() ? kind.equals(otherKind) && title.equals(otherTitle) : place.offset >= offset && place.offset < offset + length;
		}
	}

	private final List<Kept> written = new ArrayList<>();
	private final Map<String, Drafts> fresh = new LinkedHashMap<>();

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

	void keep(IDocument document, Card card, int offset, Drafts drafts) {
		if (document == null || drafts.isBlank()) {
			return;
		}
		if (card.isNew()) {
			fresh.put(card.kind(), drafts);
		} else {
			written.add(new Kept(position(document, offset), card.kind(), card.title(), drafts));
		}
	}

	/** Returns what was begun of an element, and forgets it. */
	Drafts take(Card card) {
		if (card.isNew()) {
			Drafts begun = fresh.remove(card.kind());
			return begun == null ? Drafts.NONE : begun;
		}
		for (Kept kept : written) {
			if (kept.isOf(card.kind(), card.title(), card.offset(), card.length())) {
				written.remove(kept);
				return kept.drafts();
			}
		}
		return Drafts.NONE;
	}

	/** Returns whether something was begun of an element. */
	boolean has(Card.Item item) {
		return written.stream().anyMatch(kept -> kept.isOf(item.kind(), item.title(), item.offset(), item.length()));
	}

	/** Returns the elements of which nothing is written yet. */
	List<Card.Item> fresh() {
		return fresh.keySet().stream().map(kind -> new Card.Item(kind, CardMessages.bind(CardMessages.NewCard, Labels.element(kind)), -1, 0)).toList();
	}
}
