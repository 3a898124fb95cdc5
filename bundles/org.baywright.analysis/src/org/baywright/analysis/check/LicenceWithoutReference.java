package org.baywright.analysis.check;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Hazard;
import org.baywright.model.Severity;

/** A hazard that is for licensed persons, and nobody can look up which instrument says so. */
@RuleCheck(id = "licence-without-reference", severity = Severity.WARNING, summary = "A hazard asks for licensed persons and names no instrument")
public final class LicenceWithoutReference implements Check {

	@Override
	public void report(Checked checked) {
		for (Hazard hazard : checked.base().hazards()) {
			if (!hazard.licensed().isEmpty() && hazard.references().isEmpty()) {
				checked.flaw(this, hazard.name(), hazard.span())
						.says("Hazard " + hazard.name() + " asks for licensed persons and names no instrument that says so; add it under reference, with its edition.")
						.about(hazard.name() + hazard.licensed())
						.fix(new Fix.AddLine("Add a reference", "hazard", hazard.name(), "reference \"\"")).add();
			}
		}
	}
}
