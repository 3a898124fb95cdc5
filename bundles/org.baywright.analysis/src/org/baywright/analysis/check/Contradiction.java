package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;

/** A situation in which the same fault is both confirmed and cleared. */
@RuleCheck(id = "contradiction", severity = Severity.ERROR, summary = "One rule confirms a fault that another clears in the same situation")
public final class Contradiction implements ProofCheck<List<Pairs.Clash>> {

	@Override
	public List<Pairs.Clash> examine(Prover prover) {
		Program program = prover.program();
		Pairs pairs = new Pairs(prover);
		for (Verdict verdict : program.verdicts) {
			if (verdict.kind() == VerdictKind.CONFIRMED) {
				for (int confirms : Pairs.deriving(program, verdict.fault(), VerdictKind.CONFIRMED)) {
					for (int clears : Pairs.deriving(program, verdict.fault(), VerdictKind.CLEARED)) {
						pairs.ask(verdict.fault(), confirms, clears);
					}
				}
			}
		}
		return pairs.found();
	}

	@Override
	public List<Pairs.Clash> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		ClashReport.report(checked, this, told -> "Rule " + told.firstRule() + " confirms "
				+ ClashReport.say(checked, told.subjects()) + " and rule " + told.secondRule()
				+ " clears " + told.it() + " in the same situation; withdraw one of the two, or add a condition to one of the rules.");
	}
}
