package org.baywright.presenter.flaws;

import java.util.List;

import org.baywright.model.Severity;

/**
 * Flaws of one kind.
 *
 * @param kind id of the check, or {@link #TEXT}, {@link #MISSING} or {@link #DOUBTFUL}
 * @param title what the check finds, in one sentence
 * @param severity the worst of its flaws
 * @param items its flaws by place, at least one
 */
public record Group(String kind, String title, Severity severity, List<Item> items) {

	/** Stands for what is wrong in the text itself. */
	public static final String TEXT = "text";
	/** Stands for what is understood, and lacks something that a reader needs. */
	public static final String MISSING = "text-missing";
	/** Stands for what is understood, and may not be meant. */
	public static final String DOUBTFUL = "text-doubtful";

	public Group {
		items = List.copyOf(items);
	}

	/** Returns the title with the number of flaws: "No set of tests can tell these faults apart (2)". */
	public String label() {
		return title + " (" + items.size() + ")";
	}
}
