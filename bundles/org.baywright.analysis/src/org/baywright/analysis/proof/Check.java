package org.baywright.analysis.proof;

import org.baywright.analysis.RuleCheck;

/** One kind of flaw. Implementations are final, stateless and annotated with {@link RuleCheck}. */
public interface Check {

	/** Adds all flaws of this kind. */
	void report(Checked checked);

	/** Returns the description of this check. */
	default RuleCheck about() {
		return getClass().getAnnotation(RuleCheck.class);
	}
}
