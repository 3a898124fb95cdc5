package org.baywright.analysis.run;

import org.baywright.analysis.Consultation;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.proof.Study;
import org.baywright.model.RuleBase;

/** Begins consultations. */
public final class Consultations {

	private Consultations() {
	}

	/**
	 * Begins a consultation on a vehicle of which nothing is known yet.
	 *
	 * @param base the rules
	 * @param family name of a vehicle family
	 */
	public static Consultation of(RuleBase base, String family) {
		return new Study(base, family, Prover.CONFLICT_LIMIT);
	}
}
