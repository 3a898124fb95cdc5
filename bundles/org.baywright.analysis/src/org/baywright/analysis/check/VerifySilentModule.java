package org.baywright.analysis.check;

import java.util.stream.Collectors;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;
import org.baywright.model.StateSetting;
import org.baywright.model.VerifyStep;

/** A verification that clears or reads a module in a state in which the module need not answer. */
@RuleCheck(id = "verify-silent-module", severity = Severity.WARNING, summary = "A verification relies on a module that need not answer")
public final class VerifySilentModule implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			int number = 0;
			for (Verification.Unanswered step : new Verification(checked.base(), repair).unanswered()) {
				String states = step.answersIn().stream().map(StateSetting::toString).collect(Collectors.joining(" or "));
				checked.flaw(this, repair.name() + "/" + step.module() + "/" + ++number, step.step().span())
						.says("Module " + step.module() + " need not answer here, so "
								+ (step.step() instanceof VerifyStep.Clear ? "clearing" : "reading")
								+ " it may reach nothing; set " + states + " first.")
						.about(repair.name()).add();
			}
		}
	}
}
