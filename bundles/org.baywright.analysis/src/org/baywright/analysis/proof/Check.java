package org.baywright.analysis.proof;

import org.baywright.analysis.RuleCheck;

/** One kind of finding. Implementations are final, stateless and annotated with {@link RuleCheck}. */
public interface Check {

	/** Adds all findings of this kind. */
	void report(Checked checked);

	/** Returns the description of this check. */
	default RuleCheck about() {
		return getClass().getAnnotation(RuleCheck.class);
	}
}
