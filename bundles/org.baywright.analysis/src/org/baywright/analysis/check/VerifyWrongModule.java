package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Repair;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;

/** A verification that expects something of a code after reading some other module, or none. */
@RuleCheck(id = "verify-wrong-module", severity = Severity.ERROR, summary = "A verification reads a different module from the one that holds the code")
public final class VerifyWrongModule implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			new Verification(checked.base(), repair)
					.wrong(expected -> !expected.readsItsModule(), Verification.Expectation::read)
					.forEach(expected -> report(checked, repair, expected));
		}
	}

	private void report(Checked checked, Repair repair, List<Verification.Expectation> expected) {
		Verification.Expectation first = expected.get(0);
		List<String> codes = Verification.codes(expected);
		Verification.places(expected, checked.flaw(this, repair.name() + "/" + String.join("+", codes), first.step().span()))
				.says((codes.size() == 1 ? "Code " : "Codes ") + Words.and(codes) + (codes.size() == 1 ? " is" : " are")
						+ " kept in module " + first.module() + ", but "
						+ first.read().map(read -> "module " + read + " was read last").orElse("no module was read") + "; read "
						+ first.module() + " first.")
				.about(repair.name()).add();
	}
}
