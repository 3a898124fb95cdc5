package org.baywright.analysis.check;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;

/** A verification that expects something of a code after reading some other module, or none. */
@RuleCheck(id = "verify-wrong-module", severity = Severity.ERROR, summary = "A verification reads another module than the one that holds the code")
public final class VerifyWrongModule implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			for (Verification.Expectation expected : new Verification(checked.base(), repair).expectations()) {
				if (!expected.read().filter(expected.module()::equals).isPresent()) {
					checked.finding(this, repair.name() + "/" + expected.step().code(), expected.step().span())
							.says("Code " + expected.step().code() + " is kept in module " + expected.module() + ", but "
									+ expected.read().map(read -> "module " + read + " was read last").orElse("no module was read")
									+ "; read " + expected.module() + " first.")
							.about(repair.name()).add();
				}
			}
		}
	}
}
