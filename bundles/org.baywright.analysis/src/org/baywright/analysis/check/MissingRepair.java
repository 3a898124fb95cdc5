package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Fault;
import org.baywright.model.Meaning;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;
import org.baywright.model.Written;

/**
 * A fault that rules can confirm on some vehicle for which no repair is meant. Where there is no repair at all the text
 * shows it; where the repairs are for other vehicles the smallest vehicle does.
 */
@RuleCheck(id = "missing-repair", severity = Severity.WARNING, summary = "A fault can be confirmed but no repair puts it right")
public final class MissingRepair implements ProofCheck<List<MissingRepair.Missing>> {

	/** A fault that is confirmed on a vehicle for which no repair is meant. */
	record Missing(String fault, Situation situation) {
	}

	@Override
	public List<Missing> examine(Prover prover) {
		List<Missing> missing = new ArrayList<>();
		for (int number = 0; number < prover.program().verdicts.size(); number++) {
			Verdict verdict = prover.program().verdicts.get(number);
			Formula mend = prover.program().mendOf.get(number);
			boolean limited = mend != Formula.TRUE && !prover.base().repairsOf(verdict.fault()).isEmpty();
			if (limited && verdict.kind() == VerdictKind.CONFIRMED) {
				int[] goals = { prover.encoding().verdict(number), -prover.encoding().literal(mend, false) };
				Answer answer = prover.encoding().ask(goals);
				if (answer == Answer.UNDECIDED) {
					prover.undecided("whether " + verdict.fault() + " is confirmed on a vehicle for which no repair is meant");
				} else if (answer == Answer.YES) {
					prover.smallestWith(goals).ifPresent(situation -> missing.add(new Missing(verdict.fault(), situation)));
				}
			}
		}
		return missing;
	}

	@Override
	public List<Missing> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		Set<String> confirmable = Confirming.faults(checked);
		for (Fault fault : checked.base().faults()) {
			if (confirmable.contains(fault.name()) && checked.base().repairsOf(fault.name()).isEmpty()) {
				checked.flaw(this, fault.name(), fault.span())
						.says("Rules can confirm " + ClashReport.say(checked, fault.name())
								+ ", but no repair puts it right; write the repair.")
						.about(fault.name()).fix(addRepair(checked, fault.name(), "")).add();
			}
		}
		Smallest<Missing> smallest = new Smallest<>();
		checked.each(this, (part, found) -> found.forEach(missing -> smallest.add(missing.fault(), part, missing, missing.situation())));
		smallest.each((key, part, missing) -> {
			String family = part.families().get(0);
			Checked.Draftsman flaw = checked.flaw(this, missing.fault(), checked.base().fault(missing.fault()).orElseThrow().span())
					.says("Rules can confirm " + ClashReport.say(checked, missing.fault())
							+ " on a vehicle for which no repair is meant; write a repair for it, or let one that is there reach it.")
					.shownBy(checked.witness(part, missing.situation())).about(missing.fault())
					.fix(addRepair(checked, missing.fault(), "  for " + Written.name(family) + "\n"));
			checked.base().repairsOf(missing.fault()).forEach(repair -> flaw.near(repair.span(), "repair " + repair.name() + " is for other vehicles")
					.about(repair.name() + Meaning.text(repair.scope())));
			flaw.add();
		});
	}

	private static Fix addRepair(Checked checked, String fault, String scope) {
		return new Fix.AddElement("Add a repair", "repair " + freeName(checked, fault.replace('.', '_')) + " {\n" + scope
				+ "  fixes " + Written.name(fault) + "\n  steps \"\"\n  verify { repeat what confirmed }\n}");
	}

	private static String freeName(Checked checked, String name) {
		String free = name;
		for (int i = 2; checked.base().repair(free).isPresent(); i++) {
			free = name + "_" + i;
		}
		return free;
	}
}
