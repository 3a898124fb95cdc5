package org.baywright.presenter;

import org.baywright.model.Span;

/**
 * Words that lead to a place in a rule file.
 *
 * @param text what the reader sees
 * @param span where it leads; {@link Span#NONE} for words that lead nowhere
 */
public record Link(String text, Span span) {

	/** Returns whether there is a place to go to. */
	public boolean leads() {
		return !span.file().isEmpty();
	}

	/** Returns words that name their place: "line 12 of rules.bay (note)". */
	public static Link to(Span span, String note) {
		return new Link(place(span) + (note.isEmpty() ? "" : " (" + note + ")"), span);
	}

	/** Returns how people say the place: "line 12 of rules.bay"; the empty text for none. */
	public static String place(Span span) {
		return span.file().isEmpty() ? "" : "line " + span.line() + " of " + span.file();
	}
}
