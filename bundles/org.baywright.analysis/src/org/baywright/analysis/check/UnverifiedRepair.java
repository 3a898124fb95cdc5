package org.baywright.analysis.check;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;

/** A repair that does not say how it is proved. */
@RuleCheck(id = "unverified-repair", severity = Severity.WARNING, summary = "A repair does not say how it is verified")
public final class UnverifiedRepair implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			if (repair.verify().isEmpty()) {
				checked.flaw(this, repair.name(), repair.span())
						.says("Repair " + repair.name() + " does not say how anybody knows that it worked; add \"verify\".")
						.about(repair.name())
						.fix(new Fix.AddLine("Verify by repeating what confirmed the fault", "repair", repair.name(),
								"verify { repeat what confirmed }"))
						.add();
			}
		}
	}
}
