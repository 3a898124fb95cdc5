package org.baywright.model;

import java.util.List;

/**
 * Something wrong in the text of a rule file itself: syntax, an unknown name, a unit that does not fit.
 *
 * @param kind what kind of problem it is
 * @param span where
 * @param message one plain sentence: what is wrong
 * @param advice one plain sentence: what to do, or the empty text
 * @param mends what would do what the advice says, each by itself; empty where only the author knows
 */
public record Problem(ProblemKind kind, Span span, String message, String advice, List<Mend> mends) {

	public Problem {
		mends = List.copyOf(mends);
	}

	/** A problem that only its author can mend. */
	public Problem(ProblemKind kind, Span span, String message, String advice) {
		this(kind, span, message, advice, List.of());
	}

	/** Returns the stable id of the kind. */
	public String id() {
		return kind.id();
	}

	/** Returns how much it matters. */
	public Severity severity() {
		return kind.severity();
	}
}
