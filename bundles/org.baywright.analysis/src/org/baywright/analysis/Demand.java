package org.baywright.analysis;

import org.baywright.model.Condition;
import org.baywright.model.Span;

/**
 * Something that must hold for a rule to fire.
 *
 * @param condition what must hold; for the rule's test: that it gives a result that the rule has an outcome for
 * @param isTest whether it is the result of the test that the rule runs, and no condition that the author wrote
 */
public record Demand(Condition condition, boolean isTest) {

	/** Returns where it is written. */
	public Span span() {
		return condition.span();
	}
}
