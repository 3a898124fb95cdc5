package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

import org.baywright.analysis.Situation;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Chain;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.VerdictKind;

/** Two branches that fire together though what they say does not fit: the common part of four checks. */
final class Pairs {

	/** An outcome of a rule that another rule builds on. */
	record Step(String rule, int outcome) {
	}

	/**
	 * One such pair.
	 *
	 * @param subject what they disagree about
	 * @param first rule that says the one thing
	 * @param firstOutcome number of its outcome
	 * @param second rule that says the other
	 * @param secondOutcome number of its outcome
	 * @param behindFirst what the first rests on there, from the beginning of the chain
	 * @param behindSecond what the second rests on there
	 * @param situation the smallest in which both fire
	 * @param more whether other outcomes of the two disagree about it as well
	 */
	record Clash(String subject, String first, int firstOutcome, String second, int secondOutcome, List<Step> behindFirst,
			List<Step> behindSecond, Situation situation, boolean more) {

		Clash withMore() {
			return new Clash(subject, first, firstOutcome, second, secondOutcome, behindFirst, behindSecond, situation, true);
		}

		/** Returns the smaller of two clashes of the same rules. */
		static Clash smaller(Clash old, Clash now) {
			Clash less = now.situation().findings() < old.situation().findings() ? now : old;
			return !old.eitherWay().equals(now.eitherWay()) || old.more() || now.more() ? less.withMore() : less;
		}

		String key() {
			return subject + "/" + first + "/" + second;
		}

		/** Returns the two outcomes; what they say together has one cause. */
		String outcomes() {
			return first + "/" + firstOutcome + "/" + second + "/" + secondOutcome;
		}

		/** Returns the two outcomes the other way round. */
		String turned() {
			return second + "/" + secondOutcome + "/" + first + "/" + firstOutcome;
		}

		/** Returns the two outcomes, whichever says which. */
		String eitherWay() {
			return isInOrder() ? outcomes() : turned();
		}

		/** Returns what is told once: the two rules, whichever says which, and what they disagree about. */
		String pair() {
			return subject + "/" + (isInOrder() ? first + "/" + second : second + "/" + first);
		}

		private boolean isInOrder() {
			return first.compareTo(second) <= 0;
		}
	}

	private final Prover prover;
	private final Map<String, Clash> found = new LinkedHashMap<>();

	Pairs(Prover prover) {
		this.prover = prover;
	}

	/** Returns the branches that derive the verdict; none if no rule does. */
	static List<Integer> deriving(Program program, String fault, VerdictKind kind) {
		int verdict = program.numberOf(new Verdict(fault, kind));
		return verdict < 0 ? List.of() : program.derivedBy.get(verdict);
	}

	/** Asks whether the two fire together; keeps the smallest clash of each two rules about each subject. */
	void ask(String subject, int a, int b) {
		ask(subject, a, b, List::of);
	}

	/** As {@link #ask(String, int, int)}, where in one of these ways all literals hold; none for any way. */
	void ask(String subject, int a, int b, Supplier<List<int[]>> ways) {
		if (prover.together(a, b) == Answer.YES) {
			prover.smallest(ways.get(), a, b)
					.map(situation -> new Clash(subject, prover.ruleName(a), outcome(a), prover.ruleName(b), outcome(b),
							behind(situation, a, b), behind(situation, b, a), situation, false))
					.ifPresent(clash -> found.merge(clash.pair(), clash, Clash::smaller));
		}
	}

	private int outcome(int branch) {
		return prover.program().branches.get(branch).outcome();
	}

	/** Returns the other rules that a branch rests on: one that is itself part of the clash is named anyway. */
	private List<Step> behind(Situation situation, int branch, int other) {
		return Chain.behind(prover.program(), situation, branch).stream()
				.filter(b -> !prover.ruleName(b).equals(prover.ruleName(branch)) && !prover.ruleName(b).equals(prover.ruleName(other)))
				.map(b -> new Step(prover.ruleName(b), outcome(b))).toList();
	}

	List<Clash> found() {
		List<Clash> sorted = new ArrayList<>(found.values());
		sorted.sort(Comparator.comparing(Clash::key));
		return sorted;
	}
}
