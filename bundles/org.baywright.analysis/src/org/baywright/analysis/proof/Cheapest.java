package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.BitSet;

/**
 * What ends cost at least, from a set of findings: the cheapest derivation of each verdict (Knuth 1977, "A generalization of
 * Dijkstra's algorithm"), where several conditions cost together no less than the dearest of them, and the cheapest way to rule a
 * verdict out. Laws are left aside, so every bound holds with them too.
 */
final class Cheapest {

	private static final double NEVER = Double.POSITIVE_INFINITY;

	private final SliceRules rules;
	private final Clauses clauses;
	private final KnownFacts facts;
	private final double[] costs;
	private final int[] together;
	/** For each verdict what makes it stand for good: that another does not stand may change. */
	private final double[] lasting;
	/** For each verdict what makes it stand; {@code null} until ends are asked for, as what confirms needs none of it. */
	private double[] coming;
	private final BitSet behind = new BitSet();

	/**
	 * @param costs what each variable costs that may be asked for
	 * @param together for each of these variables what is found out by one doing has the same number
	 */
	Cheapest(SliceRules rules, KnownFacts facts, double[] costs, int[] together) {
		this.rules = rules;
		this.facts = facts;
		this.costs = costs;
		this.together = together;
		clauses = rules.clauses;
		lasting = derive(true);
	}

	private double[] derive(boolean forGood) {
		double[] least = new double[rules.verdictCount()];
		Arrays.fill(least, NEVER);
		boolean changed = true;
		while (changed) {
			changed = false;
			for (int verdict = 0; verdict < least.length; verdict++) {
				double cost = !forGood && facts.stands(verdict) ? 0 : any(rules.bodies[verdict], least, forGood);
				if (cost < least[verdict]) {
					least[verdict] = cost;
					changed = true;
				}
			}
		}
		return least;
	}

	private double any(int[] nodes, double[] known, boolean forGood) {
		double least = NEVER;
		for (int node : nodes) {
			least = Math.min(least, coming(node, known, forGood));
		}
		return least;
	}

	private double coming(int node, double[] known, boolean forGood) {
		if (clauses.isVariable(node)) {
			return ofVariable(node);
		} else if (clauses.isVerdict(node)) {
			return clauses.wantsVerdict(node) ? known[clauses.about(node)] : forGood ? NEVER : 0;
		} else if (!clauses.wantsAll(node)) {
			return any(clauses.parts(node), known, forGood);
		}
		int[] parts = clauses.parts(node);
		double most = 0;
		double sum = 0;
		for (int i = 0; i < parts.length; i++) {
			double cost = coming(parts[i], known, forGood);
			if (cost == NEVER) {
				return NEVER;
			}
			most = Math.max(most, cost);
			sum += cost > 0 && clauses.isVariable(parts[i]) && !isPaidBefore(parts, i) ? cost : 0;
		}
		return Math.max(most, sum);
	}

	/** Returns whether an earlier part is found out by the same doing as this one; both cost the same. */
	private boolean isPaidBefore(int[] parts, int at) {
		int doing = together[clauses.about(parts[at])];
		for (int i = 0; i < at; i++) {
			if (clauses.isVariable(parts[i]) && facts.value(clauses.about(parts[i])) < 0 && together[clauses.about(parts[i])] == doing) {
				return true;
			}
		}
		return false;
	}

	private double ofVariable(int node) {
		return !clauses.mayHold(node, facts) ? NEVER : facts.value(clauses.about(node)) >= 0 ? 0 : costs[clauses.about(node)];
	}

	/** Returns what it costs to see that a verdict that does not stand never will. */
	private double going(int verdict) {
		if (behind.get(verdict)) {
			return 0;
		}
		behind.set(verdict);
		double most = 0;
		for (int body : rules.bodies[verdict]) {
			if (clauses.mayHold(body, facts)) {
				most = Math.max(most, failing(body));
			}
		}
		behind.clear(verdict);
		return most;
	}

	private double failing(int node) {
		if (clauses.isVariable(node)) {
			int value = facts.value(clauses.about(node));
			return value >= 0 ? clauses.mayHold(node, facts) ? NEVER : 0 : clauses.holdsAlways(node) ? NEVER : costs[clauses.about(node)];
		} else if (clauses.isVerdict(node)) {
			int verdict = clauses.about(node);
			return !clauses.wantsVerdict(node) ? coming[verdict] : facts.stands(verdict) ? facts.lasts(verdict) ? NEVER : 0 : going(verdict);
		}
		boolean all = clauses.wantsAll(node);
		double least = all ? NEVER : 0;
		for (int part : clauses.parts(node)) {
			least = all ? Math.min(least, failing(part)) : Math.max(least, failing(part));
		}
		return least;
	}

	/** @see org.baywright.analysis.Prospect.Known#confirming */
	double[] confirming() {
		double[] confirming = new double[rules.causeCount()];
		for (int cause = 0; cause < confirming.length; cause++) {
			confirming[cause] = rules.confirmed(cause) < 0 ? NEVER : lasting[rules.confirmed(cause)];
		}
		return confirming;
	}

	/** @see org.baywright.analysis.Prospect.Known#least */
	double[] ends(BitSet causes) {
		coming = derive(false);
		int count = rules.causeCount();
		double elsewhere = NEVER;
		double nothingLeft = facts.askedAboutAll() ? 0 : -1;
		double[] closing = new double[count];
		for (int verdict = 0; verdict < coming.length; verdict++) {
			int cause = rules.causeOf(verdict);
			if (rules.isEnd(verdict) && cause < 0) {
				elsewhere = Math.min(elsewhere, lasting[verdict]);
				nothingLeft = nothingLeft != 0 && rules.isReferral(verdict) && !facts.stands(verdict) && coming[verdict] < NEVER ? Math.max(nothingLeft, going(verdict)) : nothingLeft;
			}
		}
		for (int cause = 0; cause < count; cause++) {
			int confirmed = rules.confirmed(cause);
			closing[cause] = causes.get(cause) && confirmed >= 0 && !facts.stands(confirmed) && coming[confirmed] < NEVER ? going(confirmed) : 0;
		}
		double[] least = new double[count + 1];
		for (int cause = 0; cause <= count; cause++) {
			double empty = Math.max(0, nothingLeft);
			for (int other = 0; other < count && nothingLeft != 0; other++) {
				double cleared = rules.cleared(other) < 0 || other == cause ? NEVER : coming[rules.cleared(other)];
				empty = Math.max(empty, Math.min(closing[other], cleared));
			}
			double confirms = cause == count || rules.confirmed(cause) < 0 ? NEVER : lasting[rules.confirmed(cause)];
			least[cause] = Math.min(confirms, Math.min(elsewhere, nothingLeft == 0 ? 0 : empty));
		}
		return least;
	}
}
