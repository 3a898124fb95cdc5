package org.baywright.analysis.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;

/**
 * A situation in which one rule sends the same complaint on to somebody while another confirms a cause, or sends it to
 * somebody else. Rules answer the same complaint if they rest on a sign in common.
 */
@RuleCheck(id = "two-ends", severity = Severity.WARNING, summary = "The same complaint comes to two different ends in the same situation")
public final class TwoEnds implements ProofCheck<List<Pairs.Clash>> {

	@Override
	public List<Pairs.Clash> examine(Prover prover) {
		Program program = prover.program();
		Pairs pairs = new Pairs(prover);
		Map<Integer, Set<Integer>> signs = new HashMap<>();
		for (int referral = 0; referral < program.verdicts.size(); referral++) {
			if (program.verdicts.get(referral).isReferral()) {
				for (int refers : program.derivedBy.get(referral)) {
					askOthers(prover, pairs, referral, refers, signs);
				}
			}
		}
		return pairs.found();
	}

	private static void askOthers(Prover prover, Pairs pairs, int referral, int refers,
			Map<Integer, Set<Integer>> known) {
		Program program = prover.program();
		Set<Integer> complaint = known.computeIfAbsent(refers, b -> signs(program, b));
		for (int other = 0; other < program.verdicts.size() && !complaint.isEmpty(); other++) {
			Verdict verdict = program.verdicts.get(other);
			// of two referrals each pair is asked once
			if (verdict.isEnd() && other != referral && !(verdict.isReferral() && other < referral)) {
				for (int ends : program.derivedBy.get(other)) {
					Set<Integer> shared = new TreeSet<>(complaint);
					shared.retainAll(known.computeIfAbsent(ends, b -> signs(program, b)));
					if (!shared.isEmpty()) {
						pairs.ask(program.verdicts.get(referral).fault(), refers, ends,
								() -> shared.stream().map(sign -> new int[] { prover.encoding().restsOn(sign, refers),
										prover.encoding().restsOn(sign, ends) }).toList());
					}
				}
			}
		}
	}

	/** Returns the signs that the branch can rest on, itself or through verdicts that it asks for. */
	private static Set<Integer> signs(Program program, int branch) {
		Set<Integer> signs = new TreeSet<>();
		collect(program, branch, new HashSet<>(), signs);
		return signs;
	}

	private static void collect(Program program, int branch, Set<Integer> seen, Set<Integer> signs) {
		program.branches.get(branch).body().eachLeaf(leaf -> {
			if (leaf instanceof Formula.Known lit && Encoding.isSignPresent(program, lit)) {
				signs.add(lit.var());
			} else if (leaf instanceof Formula.Stands stands && stands.stands() && seen.add(stands.verdict())) {
				program.derivedBy.get(stands.verdict()).forEach(b -> collect(program, b, seen, signs));
			}
		});
	}

	@Override
	public List<Pairs.Clash> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		ClashReport.report(checked, this, told -> "Rule " + told.firstRule() + " refers the job to "
				+ Words.and(told.subjects()) + " and rule " + told.secondRule() + " brings the same complaint to another end in the same situation; "
				+ "let the one that refers ask that the sign is unexplained.");
	}
}
