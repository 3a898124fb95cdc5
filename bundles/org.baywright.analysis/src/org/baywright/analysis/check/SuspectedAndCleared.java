package org.baywright.analysis.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;
import org.baywright.model.Written;
import org.baywright.model.words.Words;

/**
 * A situation in which a fault is suspected and cleared on equally strong evidence. A test counts more than signs and
 * codes, and a rule that builds on another rule's verdict counts more than that rule: it was written knowing it.
 */
@RuleCheck(id = "suspected-and-cleared", severity = Severity.WARNING, summary = "A fault is suspected and cleared in the same situation, on equally strong evidence")
public final class SuspectedAndCleared implements ProofCheck<List<Pairs.Clash>> {

	@Override
	public List<Pairs.Clash> examine(Prover prover) {
		Program program = prover.program();
		Strength strength = new Strength(program);
		Pairs pairs = new Pairs(prover);
		for (Verdict verdict : program.verdicts) {
			if (verdict.kind() == VerdictKind.SUSPECTED) {
				for (int suspects : Pairs.deriving(program, verdict.fault(), VerdictKind.SUSPECTED)) {
					for (int clears : Pairs.deriving(program, verdict.fault(), VerdictKind.CLEARED)) {
						if (strength.of(suspects) == strength.of(clears)) {
							pairs.ask(verdict.fault(), suspects, clears);
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
		ClashReport.report(checked, this,
				told -> "Rule " + told.firstRule() + " suspects " + ClashReport.say(checked, told.subjects())
						+ " and rule " + told.secondRule() + " clears " + told.it() + " in the same situation, on equally strong evidence; "
						+ (checked.base().rule(told.clash().second()).flatMap(Rule::test).isPresent()
								? "if the second counts more, let it ask for " + Words.and(told.subjects()) + " suspected."
								: "let the weaker of them prove nothing, or rest on a test."),
				told -> askForSuspicion(checked, told));
	}

	/** The second counts more once it rests on the suspicion itself. */
	private static Optional<Fix> askForSuspicion(Checked checked, ClashReport.Told told) {
		Rule second = checked.base().rule(told.clash().second()).orElseThrow();
		if (second.test().isEmpty() || checked.base().isOfChain(second.name())) {
			return Optional.empty();
		}
		String asks = told.subjects().stream().map(fault -> Written.name(fault) + " suspected").collect(Collectors.joining(", "));
		return Optional.of(new Fix.AddLine("Let " + second.name() + " ask for " + Words.and(told.subjects()) + " suspected", "rule", second.name(),
				"given " + asks));
	}
}
