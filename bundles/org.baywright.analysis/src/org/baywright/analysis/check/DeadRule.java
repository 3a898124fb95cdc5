package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.proof.SourceLine;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.Severity;

/** A rule, or one outcome of it, that no situation fires. */
@RuleCheck(id = "dead-rule", severity = Severity.WARNING, summary = "No vehicle and no findings can make the rule apply")
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
			prover.undecided("which lines keep rule " + prover.ruleName(branches.get(0)) + " from applying");
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
			checked.flaw(this, rule.name(), rule.span())
					.says("Rule " + rule.name() + " covers no vehicle family, so it can never apply."
							+ consequences(checked, rule.outcomes())).about(rule)
					.fix(new Fix.RemoveRule("Remove the rule", rule.name())).add();
		}
		OfRules<Dead> byRule = new OfRules<>();
		checked.each(this, (part, deads) -> deads.forEach(dead -> byRule.add(dead.rule(), part, dead)));
		byRule.eachPart(checked, (name, deads) -> {
			Rule rule = checked.base().rule(name).orElseThrow();
			if (!HeldBack.in(checked).waits(rule)) {
				report(checked, rule, deads);
			}
		});
	}

	private void report(Checked checked, Rule rule, Map<Component, Dead> deads) {
		if (deads.values().stream().allMatch(Dead::whole)) {
			byReason(deads, dead -> dead.cores().get(dead.cores().size() - 1)).forEach((core, where) -> checked
					.flaw(this, rule.name() + where.subject(), rule.span())
					.says("Rule " + rule.name() + " can never apply" + where.words() + ": what it asks for cannot all be true."
							+ consequences(checked, rule.outcomes()))
					.shownBy(core(checked, core)).about(rule)
					.fix(new Fix.RemoveRule("Remove the rule", rule.name())).add());
			return;
		}
		List<Integer> everywhere = new ArrayList<>(deads.values().iterator().next().outcomes());
		deads.values().forEach(dead -> everywhere.retainAll(dead.outcomes()));
		for (int outcome : everywhere) {
			byReason(deads, dead -> dead.cores().get(dead.outcomes().indexOf(outcome))).forEach((core, where) -> checked
					.flaw(this, rule.name() + "/" + outcome + where.subject(), rule.outcomes().get(outcome).span())
					.says("The outcome \"" + rule.outcomes().get(outcome).label() + "\" of rule " + rule.name()
							+ " can never be reached" + where.words() + "."
							+ consequences(checked, List.of(rule.outcomes().get(outcome))))
					.shownBy(core(checked, core)).about(rule).add());
		}
	}

	/** Names what nothing ever says, as only dead rules say it. */
	private static String consequences(Checked checked, List<Outcome> dead) {
		Set<Verdict> lost = UnreachableConclusion.lost(checked);
		List<String> gone = dead.stream().flatMap(outcome -> outcome.conclusions().stream()).map(Verdict::of)
				.flatMap(Optional::stream).filter(lost::contains).distinct().sorted()
				.map(verdict -> verdict.isReferral() ? "refers to " + verdict.fault()
						: verdict.kind().verb() + " " + verdict.fault())
				.toList();
		return gone.isEmpty() ? "" : " So nothing ever " + String.join(", or ", gone) + ".";
	}

	/**
	 * Where a reason holds.
	 *
	 * @param subject what it adds to the id of the flaw
	 * @param words what it adds to the message
	 */
	private record Where(String subject, String words) {
		static final Where EVERYWHERE = new Where("", "");

		static Where in(List<String> families) {
			return new Where("/" + families.get(0),
					(families.size() == 1 ? " in family " : " in families ") + String.join(", ", families));
		}
	}

	/** Each family is told its own reason, where reasons differ. */
	private static Map<List<SourceLine>, Where> byReason(Map<Component, Dead> deads, Function<Dead, List<SourceLine>> reason) {
		Map<List<SourceLine>, List<String>> families = new LinkedHashMap<>();
		deads.forEach((part, dead) -> families.computeIfAbsent(reason.apply(dead), key -> new ArrayList<>())
				.addAll(part.families()));
		Map<List<SourceLine>, Where> where = new LinkedHashMap<>();
		families.forEach((core, names) -> where.put(core, families.size() == 1 ? Where.EVERYWHERE : Where.in(names)));
		return where;
	}

	private static Evidence core(Checked checked, List<SourceLine> lines) {
		return lines.isEmpty() ? new Evidence.Undecided("which lines are the reason") : checked.core(lines);
	}

}
