package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;

/** A verification that finds a code gone though its module cannot have tested for it since it was cleared. */
@RuleCheck(id = "verify-without-own-test", severity = Severity.ERROR, summary = "A verification re-reads a code for which its module cannot have tested")
public final class VerifyWithoutOwnTest implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			new Verification(checked.base(), repair).wrong(VerifyWithoutOwnTest::provesNothing, Verification.Expectation::lacking)
					.forEach(expected -> report(checked, repair, expected));
		}
	}

	/** What was not cleared, not cycled or read in another module is told by other checks. */
	private static boolean provesNothing(Verification.Expectation expected) {
		return expected.readsItsModule() && !expected.step().present() && expected.cleared() && expected.cycled()
				&& !expected.lacking().isEmpty();
	}

	private void report(Checked checked, Repair repair, List<Verification.Expectation> expected) {
		Verification.Expectation first = expected.get(0);
		List<String> codes = Verification.codes(expected);
		boolean one = codes.size() == 1;
		Verification.places(expected, checked.flaw(this, repair.name() + "/" + String.join("+", codes), first.step().span()))
				.says("That " + (one ? "code " : "codes ") + Words.and(codes) + (one ? " is" : " are")
						+ " absent proves nothing here: between clear and read, module " + first.module() + " has not had "
						+ Words.and(first.lacking()) + ", which it needs to test for " + (one ? "it" : "them") + ".")
				.about(repair.name() + first.lacking()).add();
	}
}
