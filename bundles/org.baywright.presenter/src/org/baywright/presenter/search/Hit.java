package org.baywright.presenter.search;

import java.util.Comparator;
import java.util.Locale;

import org.baywright.model.Span;

/**
 * An element that a search found.
 *
 * @param element what it is
 * @param title what a technician calls it
 * @param because which of the words' things it has to do with: "test Battery voltage at rest"; the empty text if it is
 *            that thing itself
 * @param span where its name stands
 */
public record Hit(Element element, String title, String because, Span span) implements Comparable<Hit> {

	private static final Comparator<Hit> ORDER = Comparator.comparing(Hit::span).thenComparing(Hit::element).thenComparing(Hit::title);

	/** Kinds of elements. */
	public enum Element {
		FAMILY, TRAIT, STATE, TOOL, WORKSHOP, HAZARD, MODULE, CODE, SIGN, PART, FAULT, TEST, LAW, RULE, REPAIR, JOB, REVIEW, REMARK, REVIEWER;

		/** Returns what a technician calls it. */
		public String word() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	/** Returns the line of a list: "rule Low battery: test Battery voltage at rest". */
	public String line() {
		return element.word() + " " + title + (because.isEmpty() ? "" : ": " + because);
	}

	@Override
	public int compareTo(Hit other) {
		return ORDER.compare(this, other);
	}
}
