package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;

/** A situation in which two faults are confirmed of which only one can be the cause. */
@RuleCheck(id = "exclusive-faults", severity = Severity.ERROR, summary = "Two faults are confirmed in the same situation though only one of them can be the cause")
public final class ExclusiveFaults implements ProofCheck<List<Pairs.Clash>> {

	@Override
	public List<Pairs.Clash> examine(Prover prover) {
		Program program = prover.program();
		Pairs pairs = new Pairs(prover);
		for (List<String> group : program.exclusives) {
			List<String> faults = group.stream().distinct().sorted().toList();
			for (int i = 0; i < faults.size(); i++) {
				for (int j = i + 1; j < faults.size(); j++) {
					for (int a : Pairs.deriving(program, faults.get(i), VerdictKind.CONFIRMED)) {
						for (int b : Pairs.deriving(program, faults.get(j), VerdictKind.CONFIRMED)) {
							pairs.ask(faults.get(i) + "+" + faults.get(j), a, b);
						}
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
		ClashReport.reportExclusive(checked, this, told -> {
			String first = "Rule " + told.firstRule() + " confirms ";
			return told.clash().first().equals(told.clash().second())
					? first + ClashReport.say(checked, told.subjects())
							+ " in the same situation, but only one of them can be the cause; decide for one."
					: first + ClashReport.say(checked, told.first()) + " and rule " + told.secondRule() + " confirms "
							+ ClashReport.say(checked, told.second())
							+ ", but only one of them can be the cause; withdraw one of the two, or add a condition to one of the rules.";
		});
	}
}
