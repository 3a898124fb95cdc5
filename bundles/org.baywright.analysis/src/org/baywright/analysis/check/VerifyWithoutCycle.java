package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;

/**
 * A verification that finds a code gone without having cleared it, or before the module could test itself again: it
 * would find the same after no repair at all.
 */
@RuleCheck(id = "verify-without-cycle", severity = Severity.ERROR, summary = "A verification re-reads a code without the cycle that lets the module test itself again")
public final class VerifyWithoutCycle implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			new Verification(checked.base(), repair).wrong(VerifyWithoutCycle::provesNothing, Verification.Expectation::cleared)
					.forEach(expected -> report(checked, repair, expected));
		}
	}

	private static boolean provesNothing(Verification.Expectation expected) {
		return expected.readsItsModule() && !expected.step().present() && !(expected.cleared() && expected.cycled());
	}

	private void report(Checked checked, Repair repair, List<Verification.Expectation> expected) {
		Verification.Expectation first = expected.get(0);
		List<String> codes = Verification.codes(expected);
		boolean one = codes.size() == 1;
		Verification.places(expected, checked.flaw(this, repair.name() + "/" + String.join("+", codes), first.step().span()))
				.says("That " + (one ? "code " : "codes ") + Words.and(codes) + (one ? " is" : " are")
						+ " absent proves nothing here: module " + first.module()
						+ (first.cleared() ? " was read before a cycle let it test itself again; write a cycle line, such as \"cycle ignition\", between clear and read."
								: " was not cleared before; clear it, cycle, then read it."))
				.about(repair.name()).add();
	}
}
