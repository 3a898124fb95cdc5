package org.baywright.analysis.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.Fix;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;
import org.baywright.model.VerifyStep;

/** A verification that passes whether or not anything was repaired: it expects nothing, or what is so before the repair. */
@RuleCheck(id = "verify-cannot-fail", severity = Severity.WARNING, summary = "A verification passes on a vehicle that nobody repaired")
public final class VerifyCannotFail implements Check {

	@Override
	public void report(Checked checked) {
		Map<Component, Prover> provers = new HashMap<>();
		for (Repair repair : checked.base().repairs()) {
			if (repair.verify().isEmpty() || repair.verify().stream().anyMatch(VerifyStep.RepeatWhatConfirmed.class::isInstance)) {
				continue; // reported as unverified, or repeats what showed the fault
			}
			List<Expects> all = repair.verify().stream().filter(Expects::isOne).map(step -> Expects.of(checked.base(), step)).toList();
			if (all.isEmpty()) {
				flaw(checked, repair, "expects nothing, so it passes whatever was done");
			} else if (all.stream().noneMatch(expects -> canFail(checked, repair, expects, provers))) {
				flaw(checked, repair, "expects only what is so on every vehicle on which rules confirm "
						+ ClashReport.say(checked, repair.fixes()) + ", so it passes without the repair");
			}
		}
	}

	private void flaw(Checked checked, Repair repair, String why) {
		checked.flaw(this, repair.name(), repair.span())
				.says("The verification of repair " + repair.name() + " " + why + "; add \"repeat what confirmed\".")
				.fix(new Fix.AddLine("Also repeat what confirmed the fault", "verify", repair.name(), "repeat what confirmed"))
				.about(repair.name() + repair.verify().stream().map(step -> step.getClass().getSimpleName()).toList()).add();
	}

	/** Returns whether a step can fail on a vehicle on which rules confirm a fault that the repair puts right. */
	private static boolean canFail(Checked checked, Repair repair, Expects expects, Map<Component, Prover> provers) {
		boolean confirmed = false;
		for (String fault : repair.fixes()) {
			for (Rule rule : Confirming.rules(checked, repair, fault)) {
				for (Component part : checked.partsOf(rule.name())) {
					Prover prover = provers.computeIfAbsent(part, key -> checked.prover(key, key.families().get(0), List.of()));
					int verdict = prover.program().numberOf(new Verdict(fault, VerdictKind.CONFIRMED));
					Formula meant = prover.program().mendOf.get(verdict).get(repair.name());
					confirmed |= meant != null;
					if (meant != null && canFail(prover, verdict, meant, expects)) {
						return true;
					}
				}
			}
		}
		return !confirmed; // of a fault that nothing confirms there is nothing to say
	}

	private static boolean canFail(Prover prover, int verdict, Formula meant, Expects expects) {
		Program program = prover.program();
		int var = program.numberOf(expects.variable());
		if (var < 0 || !program.isStratified() || !prover.isPossible()) {
			return true; // no rule and no law ties it to the fault
		}
		return prover.encoding().ask(prover.encoding().verdict(verdict), prover.encoding().literal(meant, false),
				prover.encoding().values.in(var, expects.failing(program, var))) != Answer.NO;
	}
}
