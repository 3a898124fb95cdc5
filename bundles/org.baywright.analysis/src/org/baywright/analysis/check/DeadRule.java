package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.proof.SourceLine;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Rule;
import org.baywright.model.Severity;

/** A rule, or one outcome of it, that no situation fires. */
@RuleCheck(id = "dead-rule", severity = Severity.WARNING, summary = "No vehicle and no findings can make the rule fire")
public final class DeadRule implements ProofCheck<List<DeadRule.Dead>> {

	/**
	 * Outcomes of one rule that never fire in one part.
	 *
	 * @param rule name of the rule
	 * @param outcomes their numbers, ascending
	 * @param whole whether these are all outcomes of the rule
	 * @param cores for each of the outcomes the lines that forbid it; last, if {@code whole}, those that forbid all
	 */
	record Dead(String rule, List<Integer> outcomes, boolean whole, List<List<SourceLine>> cores) {
	}

	@Override
	public List<Dead> examine(Prover prover) {
		List<Dead> found = new ArrayList<>();
		for (int rule = 0; rule < prover.program().rules.size(); rule++) {
			List<Integer> branches = prover.program().branchesOf.get(rule);
			List<Integer> dead = branches.stream().filter(b -> prover.live(b) == Answer.NO).toList();
			if (!dead.isEmpty()) {
				boolean whole = dead.size() == branches.size();
				List<List<SourceLine>> cores = new ArrayList<>();
				dead.forEach(b -> cores.add(core(prover, List.of(b))));
				if (whole) {
					cores.add(core(prover, dead));
				}
				found.add(new Dead(prover.program().rules.get(rule).name(),
						dead.stream().map(b -> prover.program().branches.get(b).outcome()).toList(), whole, cores));
			}
		}
		return found;
	}

	private static List<SourceLine> core(Prover prover, List<Integer> branches) {
		Optional<List<SourceLine>> lines = prover.reasons().whyNever(branches);
		if (lines.isEmpty()) {
			prover.undecided("which lines keep rule " + prover.ruleName(branches.get(0)) + " from firing");
		}
		return lines.orElse(List.of());
	}

	@Override
	public List<Dead> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		for (Rule rule : checked.unreached()) {
			checked.finding(this, rule.name(), rule.span())
					.says("Rule " + rule.name() + " covers no vehicle family, so it can never fire.").about(rule)
					.fix(new Fix.RemoveRule("Remove the rule", rule.name())).add();
		}
		OfRules<Dead> byRule = new OfRules<>();
		checked.each(this, (part, deads) -> deads.forEach(dead -> byRule.add(dead.rule(), part, dead)));
		byRule.each(checked, (name, deads) -> report(checked, checked.base().rule(name).orElseThrow(), deads));
	}

	private void report(Checked checked, Rule rule, List<Dead> deads) {
		Dead first = deads.get(0);
		if (deads.stream().allMatch(Dead::whole)) {
			checked.finding(this, rule.name(), rule.span())
					.says("Rule " + rule.name() + " can never fire: what it asks for cannot all be true.")
					.shownBy(core(checked, first.cores().get(first.cores().size() - 1))).about(rule)
					.fix(new Fix.RemoveRule("Remove the rule", rule.name())).add();
			return;
		}
		List<Integer> everywhere = new ArrayList<>(first.outcomes());
		deads.forEach(dead -> everywhere.retainAll(dead.outcomes()));
		for (int outcome : everywhere) {
			List<SourceLine> core = first.cores().get(IntStream.range(0, first.outcomes().size())
					.filter(i -> first.outcomes().get(i) == outcome).findFirst().orElseThrow());
			checked.finding(this, rule.name() + "/" + outcome, rule.outcomes().get(outcome).span())
					.says("The outcome \"" + rule.outcomes().get(outcome).label() + "\" of rule " + rule.name()
							+ " can never be reached.")
					.shownBy(core(checked, core)).about(rule).add();
		}
	}

	private static Evidence core(Checked checked, List<SourceLine> lines) {
		return lines.isEmpty() ? new Evidence.Undecided("which lines are the reason") : checked.core(lines);
	}

}
