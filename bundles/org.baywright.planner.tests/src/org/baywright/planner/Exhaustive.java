package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tries all orders of checks, with nothing of the code that is tested: what is known is which check showed what. */
public final class Exhaustive {

	/** Of a check that is not done. */
	private static final int OPEN = -1;

	private Exhaustive() {
	}

	/** Returns what is to be expected of the best order. */
	public static double cost(double[] prior, List<Matrix.Check> checks) {
		return cost(prior, checks, Collections.nCopies(checks.size(), OPEN), new HashMap<>());
	}

	private static double cost(double[] weights, List<Matrix.Check> checks, List<Integer> done, Map<List<Integer>, Double> known) {
		Double before = known.get(done);
		if (before != null) {
			return before;
		}
		double best = Double.POSITIVE_INFINITY;
		double total = Arrays.stream(weights).sum();
		for (int number = 0; number < checks.size(); number++) {
			Matrix.Check check = checks.get(number);
			if (done.get(number) != OPEN || !matters(weights, check)) {
				continue;
			}
			double cost = check.cost();
			for (int outcome = 0; outcome < check.ends().length; outcome++) {
				double[] after = weights.clone();
				for (int cause = 0; cause < after.length; cause++) {
					after[cause] *= check.likelihood()[outcome][cause];
				}
				double share = Arrays.stream(after).sum() / total;
				if (share > 0 && !check.ends()[outcome]) {
					List<Integer> more = new ArrayList<>(done);
					more.set(number, outcome);
					cost += share * cost(after, checks, more, known);
				}
			}
			best = Math.min(best, cost);
		}
		double cost = best == Double.POSITIVE_INFINITY ? 0 : best;
		known.put(done, cost);
		return cost;
	}

	/** A check is worth doing if it tells causes apart that are possible, or may end the search. */
	private static boolean matters(double[] weights, Matrix.Check check) {
		for (int outcome = 0; outcome < check.ends().length; outcome++) {
			double first = -1;
			for (int cause = 0; cause < weights.length; cause++) {
				double likely = check.likelihood()[outcome][cause];
				if (weights[cause] > 0 && (first >= 0 && likely != first || check.ends()[outcome] && likely > 0)) {
					return true;
				} else if (weights[cause] > 0) {
					first = likely;
				}
			}
		}
		return false;
	}
}
