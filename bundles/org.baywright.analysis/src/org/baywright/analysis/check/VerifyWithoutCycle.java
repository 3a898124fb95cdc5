package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
			Map<List<Object>, List<Verification.Expectation>> byCause = new LinkedHashMap<>();
			for (Verification.Expectation expected : new Verification(checked.base(), repair).expectations()) {
				boolean rightModule = expected.read().filter(expected.module()::equals).isPresent();
				if (rightModule && !expected.step().present() && !(expected.cleared() && expected.cycled())) {
					byCause.computeIfAbsent(List.of(expected.module(), expected.cleared()), key -> new ArrayList<>()).add(expected);
				}
			}
			byCause.values().forEach(expected -> report(checked, repair, expected));
		}
	}

	private void report(Checked checked, Repair repair, List<Verification.Expectation> expected) {
		Verification.Expectation first = expected.get(0);
		List<String> codes = Verification.codes(expected);
		boolean one = codes.size() == 1;
		Verification.places(expected, checked.finding(this, repair.name() + "/" + String.join("+", codes), first.step().span()))
				.says("That " + (one ? "code " : "codes ") + ClashReport.list(codes) + (one ? " is" : " are")
						+ " absent proves nothing here: module " + first.module()
						+ (first.cleared() ? " was read before a cycle let it test itself again; cycle between clearing and reading."
								: " was not cleared before; clear it, cycle, then read it."))
				.about(repair.name()).add();
	}
}
