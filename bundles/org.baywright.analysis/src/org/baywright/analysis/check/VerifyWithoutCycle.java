package org.baywright.analysis.check;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;

/**
 * A verification that finds a code gone without having cleared it, or before the module could test itself again: it
 * would find the same after no repair at all.
 */
@RuleCheck(id = "verify-without-cycle", severity = Severity.ERROR, summary = "A verification re-reads a code without the cycle that lets the module test itself again")
public final class VerifyWithoutCycle implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			for (Verification.Expectation expected : new Verification(checked.base(), repair).expectations()) {
				boolean rightModule = expected.read().filter(expected.module()::equals).isPresent();
				if (rightModule && !expected.step().present() && !(expected.cleared() && expected.cycled())) {
					checked.finding(this, repair.name() + "/" + expected.step().code(), expected.step().span())
							.says("That code " + expected.step().code() + " is absent proves nothing here: module "
									+ expected.module() + (expected.cleared() ? " was read before a cycle let it test itself again; "
											+ "cycle between clearing and reading."
											: " was not cleared before; clear it, cycle, then read it."))
							.about(repair.name()).add();
				}
			}
		}
	}
}
