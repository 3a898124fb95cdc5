package org.baywright.analysis.proof;

import org.baywright.model.Rule;

/**
 * A check that looks at each rule alone, with nothing but what it speaks of. A rule it has nothing to say about is not
 * looked at again until it changes.
 */
public interface EachRule extends Check {

	/** Adds the flaws about one rule. */
	void report(Checked checked, Rule rule);

	@Override
	default void report(Checked checked) {
		checked.base().rules().forEach(rule -> report(checked, rule));
	}
}
