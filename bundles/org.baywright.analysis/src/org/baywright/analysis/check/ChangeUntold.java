package org.baywright.analysis.check;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;
import org.baywright.model.Written;

/** A repair after which something is not as before, and nobody is told. */
@RuleCheck(id = "change-untold", severity = Severity.WARNING, summary = "A repair changes something for good and nobody is told")
public final class ChangeUntold implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			if (!repair.changesForGood().isEmpty() && repair.notices().isEmpty()) {
				checked.flaw(this, repair.name(), repair.span())
						.says("Repair " + repair.name() + " changes something for good and nobody is told; say who must know it.")
						.about(repair.name() + repair.changesForGood())
						.fix(new Fix.AddLine("Tell the customer", "repair", repair.name(),
								"tell customer " + Written.text(String.join(" ", repair.changesForGood()))))
						.add();
			}
		}
	}
}
