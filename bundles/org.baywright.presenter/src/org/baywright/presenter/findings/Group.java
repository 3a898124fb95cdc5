package org.baywright.presenter.findings;

import java.util.List;

import org.baywright.model.Severity;

/**
 * Findings of one kind.
 *
 * @param kind id of the check, or {@link #TEXT}
 * @param title what the check finds, in one sentence
 * @param severity the worst of its findings
 * @param items its findings by place, at least one
 */
public record Group(String kind, String title, Severity severity, List<Item> items) {

	/** Stands for all problems of the text itself. */
	public static final String TEXT = "text";

	public Group {
		items = List.copyOf(items);
	}

	/** Returns the title with the number of findings: "No set of tests can tell these faults apart (2)". */
	public String label() {
		return title + " (" + items.size() + ")";
	}
}
