package org.baywright.analysis.check;

import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Fault;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;

/** A fault that no situation confirms; one that dead rules would confirm is named where these are told. */
@RuleCheck(id = "unfound-fault", severity = Severity.WARNING, summary = "There is no way to confirm this fault")
public final class UnfoundFault implements Check {

	@Override
	public void report(Checked checked) {
		Set<Verdict> lost = UnreachableConclusion.lost(checked);
		Set<String> confirmable = Confirming.faults(checked);
		for (Fault fault : checked.base().faults()) {
			boolean told = lost.contains(new Verdict(fault.name(), VerdictKind.CONFIRMED)); // with the dead rules
			if (!confirmable.contains(fault.name()) && !told && !HeldBack.in(checked).decides(fault.name())) {
				checked.flaw(this, fault.name(), fault.span())
						.says("No rule can ever confirm " + ClashReport.say(checked, fault.name())
								+ "; write a rule that confirms it by a test.")
						.about(fault.name()).add();
			}
		}
	}
}
