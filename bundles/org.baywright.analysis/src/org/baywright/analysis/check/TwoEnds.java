package org.baywright.analysis.check;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.IndexSet;
import org.baywright.model.Severity;

/**
 * A situation in which one rule sends the same complaint on to somebody while another confirms a cause, or sends it to
 * somebody else. Rules answer the same complaint if they need a sign in common.
 */
@RuleCheck(id = "two-ends", severity = Severity.WARNING, summary = "The same complaint comes to two different ends in the same situation")
public final class TwoEnds implements ProofCheck<List<Pairs.Clash>> {

	@Override
	public List<Pairs.Clash> examine(Prover prover) {
		Program program = prover.program();
		Pairs pairs = new Pairs(prover);
		for (int referral = 0; referral < program.verdicts.size(); referral++) {
			if (program.verdicts.get(referral).isReferral()) {
				for (int refers : program.derivedBy.get(referral)) {
					askOthers(prover, pairs, referral, refers);
				}
			}
		}
		return pairs.found();
	}

	private static void askOthers(Prover prover, Pairs pairs, int referral, int refers) {
		Program program = prover.program();
		Set<Integer> complaint = signs(prover, refers);
		for (int other = 0; other < program.verdicts.size() && !complaint.isEmpty(); other++) {
			Verdict verdict = program.verdicts.get(other);
			// of two referrals each pair is asked once
			if (verdict.isEnd() && other != referral && !(verdict.isReferral() && other < referral)) {
				for (int ends : program.derivedBy.get(other)) {
					Set<Integer> shared = new HashSet<>(complaint);
					shared.retainAll(signs(prover, ends));
					if (!shared.isEmpty()) {
						pairs.ask(program.verdicts.get(referral).fault(), refers, ends);
					}
				}
			}
		}
	}

	private static Set<Integer> signs(Prover prover, int branch) {
		Set<Integer> signs = new HashSet<>();
		Optional<Map<Integer, IndexSet>> needs = prover.needs().of(branch);
		needs.ifPresent(known -> known.forEach((var, cells) -> {
			if (prover.program().variables.get(var).kind() == Variable.Kind.SIGN
					&& cells.equals(IndexSet.range(Variable.PRESENT, Variable.PRESENT))) {
				signs.add(var);
			}
		}));
		return signs;
	}

	@Override
	public List<Pairs.Clash> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		ClashReport.report(checked, this, clash -> "Rule " + clash.first() + " refers the job to " + clash.subject()
				+ " and rule " + clash.second() + " brings the same complaint to another end in the same situation; "
				+ "let the one that refers ask that the sign is unexplained.");
	}
}
