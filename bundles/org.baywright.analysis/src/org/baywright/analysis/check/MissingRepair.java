package org.baywright.analysis.check;

import java.util.HashSet;
import java.util.Set;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Fault;
import org.baywright.model.Severity;

/** A fault that can be confirmed and that no repair puts right. */
@RuleCheck(id = "missing-repair", severity = Severity.WARNING, summary = "A fault can be confirmed but no repair puts it right")
public final class MissingRepair implements Check {

	@Override
	public void report(Checked checked) {
		Set<String> fixed = new HashSet<>();
		checked.base().repairs().forEach(repair -> fixed.addAll(repair.fixes()));
		Set<String> confirmable = Confirming.faults(checked);
		for (Fault fault : checked.base().faults()) {
			if (confirmable.contains(fault.name()) && !fixed.contains(fault.name())) {
				checked.finding(this, fault.name(), fault.span())
						.says("Rules can confirm " + ClashReport.say(checked, fault.name())
								+ ", but no repair puts it right; write the repair.")
						.about(fault.name())
						.fix(new Fix.AddElement("Add a repair",
								"repair " + fault.name().replace('.', '_') + " {\n  fixes " + fault.name()
										+ "\n  steps \"\"\n  verify { repeat what confirmed }\n}"))
						.add();
			}
		}
	}
}
