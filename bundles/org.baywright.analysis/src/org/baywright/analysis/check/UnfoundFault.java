package org.baywright.analysis.check;

import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Fault;
import org.baywright.model.Severity;

/** A fault that no situation confirms. */
@RuleCheck(id = "unfound-fault", severity = Severity.WARNING, summary = "There is no way to confirm this fault")
public final class UnfoundFault implements Check {

	@Override
	public void report(Checked checked) {
		Set<String> confirmable = Confirming.faults(checked);
		for (Fault fault : checked.base().faults()) {
			if (!confirmable.contains(fault.name())) {
				checked.finding(this, fault.name(), fault.span())
						.says("No rule can ever confirm " + ClashReport.say(checked, fault.name())
								+ "; write a rule that confirms it by a test.")
						.about(fault.name()).add();
			}
		}
	}
}
