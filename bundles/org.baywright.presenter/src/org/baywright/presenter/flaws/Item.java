package org.baywright.presenter.flaws;

import java.util.List;
import java.util.Optional;

import org.baywright.model.Severity;
import org.baywright.presenter.Link;

/**
 * One flaw, or one problem of the text.
 *
 * @param id the same as long as the flaw is
 * @param about what fixes name as what they are about: the id of the flaw, or of the kind of problem
 * @param kind id of the check or of the kind of problem
 * @param severity how much it matters
 * @param message one plain sentence
 * @param place where it is
 * @param advice what to do, or the empty text
 * @param evidence what shows it; nothing if the text alone does
 * @param related further places
 * @param accepted why it may stand, by whom and when
 * @param fixes what could be done about it by a click, best first
 * @param hasHelp whether there is a page of help on its kind
 */
public record Item(String id, String about, String kind, Severity severity, String message, Link place, String advice,
		Optional<Shown> evidence, List<Link> related, Optional<String> accepted, List<String> fixes, boolean hasHelp) {

	/**
	 * What shows a flaw.
	 *
	 * @param title how to read it: "For example:"
	 * @param lines sentences of a story, or lines that lead to the text
	 */
	public record Shown(String title, List<Link> lines) {
		public Shown {
			lines = List.copyOf(lines);
		}
	}

	public Item {
		related = List.copyOf(related);
		fixes = List.copyOf(fixes);
	}

	/** Returns everything in it that a reader may search for. */
	String searched() {
		StringBuilder text = new StringBuilder(kind).append('\n').append(message).append('\n').append(place.text())
				.append('\n').append(id);
		evidence.ifPresent(shown -> shown.lines().forEach(line -> text.append('\n').append(line.text())));
		related.forEach(link -> text.append('\n').append(link.text()));
		accepted.ifPresent(reason -> text.append('\n').append(reason));
		return text.toString();
	}
}
