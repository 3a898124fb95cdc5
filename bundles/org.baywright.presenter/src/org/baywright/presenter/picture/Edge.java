package org.baywright.presenter.picture;

import org.baywright.model.Span;

/**
 * A line in the picture, from what is given to a rule, or from a rule to what follows.
 *
 * @param from id of a node
 * @param to id of a node
 * @param kind how the two hang together
 * @param label what must be found, or which result it is; or the empty text
 * @param span where it is written
 */
public record Edge(String from, String to, Kind kind, String label, Span span) {

	/** How two things hang together. */
	public enum Kind {
		/** The rule asks for it. */
		GIVEN,
		/** The rule asks for it or for something else. */
		ALTERNATIVE,
		/** The rule says it. */
		FOLLOWS
	}
}
