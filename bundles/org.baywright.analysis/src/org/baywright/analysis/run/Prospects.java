package org.baywright.analysis.run;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.proof.Outlook;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.RuleBase;

/** Looks ahead at what can become of a vehicle. */
public final class Prospects {

	private Prospects() {
	}

	/**
	 * Begins to look ahead.
	 *
	 * @param base the rules
	 * @param family name of a vehicle family
	 */
	public static Prospect of(RuleBase base, String family) {
		return new Outlook(base, family, Prover.CONFLICT_LIMIT);
	}
}
