package org.baywright.presenter.plan;

import java.util.List;

import org.baywright.model.Span;

/**
 * A place in the tree of a plan, with the result that leads there.
 *
 * @param kind what is there
 * @param result the result before it in words; the empty text for the first place
 * @param share how many of all vehicles come here, from 0 to 1
 * @param title what to do, or how it ends
 * @param detail how long it takes, or more of the end; or the empty text
 * @param span where what is done or confirmed is written
 * @param after what follows, one for each result that is told
 */
public record Twig(Kind kind, String result, double share, String title, String detail, Span span, List<Twig> after) {

	/** What can be at a place. */
	public enum Kind {
		/** Something is done. */
		STEP,
		/** One fault or several are confirmed. */
		CONFIRMED,
		/** Somebody else goes on. */
		REFERRED,
		/** Nothing is confirmed, and nothing is left to look for. */
		NOTHING,
		/** What follows is not told, as so few vehicles come here. */
		MORE
	}

	public Twig {
		after = List.copyOf(after);
	}

	/** Returns the result before it with the share of all vehicles: "below 12.0 V, 34 of 100". */
	public String leads() {
		return result + ", " + Figures.of100(share);
	}

	/** Returns whether somewhere from here on it is not told what follows. */
	boolean leavesOut() {
		return kind == Kind.MORE || after.stream().anyMatch(Twig::leavesOut);
	}

	/** Returns how many places there are from here on. */
	public int size() {
		return 1 + after.stream().mapToInt(Twig::size).sum();
	}
}
