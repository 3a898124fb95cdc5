package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.run.Prospects;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/**
 * The search for the cause on one vehicle, by the rules. One fault is the cause, of those that rules may confirm from the
 * complaint, or something else. A result that the rules hold against a fault rules it out. It ends when the rules confirm a
 * fault or refer, or when nothing that can still be found would make them say more.
 */
public final class Diagnosis {

	/** Likelihoods that differ by less than one part of this are alike. */
	private static final double ROUNDED = 1e9;

	private final Prospect.Ahead ahead;
	private final Beliefs beliefs;
	private final Effort effort;
	private final double everything;

	private Diagnosis(RuleBase base, Prospect.Ahead ahead, double rate) {
		this.ahead = ahead;
		beliefs = new Beliefs(base, ahead);
		effort = new Effort(base, ahead, rate);
		everything = effort.all();
	}

	/**
	 * Begins.
	 *
	 * @param family name of the vehicle's family
	 * @param readings what is known of the vehicle
	 * @param rate what a minute costs in the project's own money, 0 or more
	 * @return nothing if no vehicle has all of it
	 */
	public static Optional<Diagnosis> of(RuleBase base, String family, List<Reading> readings, double rate) {
		return of(base, Prospects.of(base, family), readings, rate);
	}

	/** Begins on a family whose rules are ready. */
	public static Optional<Diagnosis> of(RuleBase base, Prospect prospect, List<Reading> readings, double rate) {
		return prospect.begin(readings).map(ahead -> new Diagnosis(base, ahead, rate));
	}

	/** Returns the faults that it may be, in the order of the rule base. */
	public List<String> causes() {
		return ahead.causes();
	}

	/** Returns where one stands at the beginning. */
	public At begin() {
		return new At(ahead.known(), beliefs.prior());
	}

	/** What is found so far. */
	public final class At implements Position {

		private final Prospect.Known known;
		private final double[] weights;
		private final BitSet left = new BitSet();
		private List<Step> steps;
		private Object key;
		private double bound = -1;

		private At(Prospect.Known known, double[] weights) {
			this.known = known;
			this.weights = weights;
			for (int cause = 0; cause < weights.length - 1; cause++) {
				left.set(cause, weights[cause] > 0);
			}
		}

		/** Returns what the rules derive, sorted. */
		public List<Verdict> verdicts() {
			return known.verdicts();
		}

		/** Returns whether the rules have come to an end: a fault is confirmed, or somebody else goes on. */
		public boolean isSettled() {
			return known.isSettled();
		}

		/** Returns how likely it is each of the causes, in their order, and last that it is something else. */
		public double[] likelihoods() {
			return weights.clone();
		}

		/** What was found and no longer matters makes no difference. */
		@Override
		public Object key() {
			if (key == null) {
				key = isSettled() ? known.said() : List.of(known.said(), known.mattering(left), rounded());
			}
			return key;
		}

		private List<Long> rounded() {
			return Arrays.stream(weights).mapToObj(weight -> Math.round(weight * ROUNDED)).toList();
		}

		@Override
		public List<Step> steps() {
			if (steps == null) {
				int[] open = isSettled() ? new int[0] : known.open(left);
				// what a doing shows beside what it was done for is seen anyway
				int[] seen = Arrays.stream(open).filter(finding -> effort.isPaid(finding, known)).limit(1).toArray();
				steps = Arrays.stream(seen.length > 0 ? seen : open).<Step>mapToObj(finding -> new Finding(this, finding)).filter(step -> step.outcomes() > 0).toList();
			}
			return steps;
		}

		@Override
		public double bound() {
			if (bound < 0) {
				bound = isSettled() || known.open(left).length == 0 ? 0 : expectedAtLeast();
			}
			return bound;
		}

		private double expectedAtLeast() {
			double[] least = known.least(effort.least(known), effort.together(), left);
			double sum = 0;
			for (int cause = 0; cause < weights.length; cause++) {
				sum += weights[cause] == 0 ? 0 : weights[cause] * least[cause];
			}
			return Double.isFinite(sum) ? sum : 0;
		}

		/** Whatever is found, nothing more is asked for than what may come to be asked for at all. */
		@Override
		public double most() {
			return everything;
		}

		@Override
		public double uncertainty() {
			return isSettled() ? 0 : Position.entropy(weights);
		}
	}

	/** Something to find out. */
	public final class Finding implements Position.Step {

		private final At at;
		private final int finding;
		private final int[] values;
		private final At[] after;
		private final double[] probabilities;

		private Finding(At at, int finding) {
			this.at = at;
			this.finding = finding;
			values = at.known.possible(finding);
			after = new At[values.length];
			probabilities = new double[values.length];
			double[][] likelihood = beliefs.likelihood(finding);
			int causes = at.weights.length;
			double[] alive = new double[causes];
			double[][] shares = new double[values.length][causes];
			Prospect.Known[] then = new Prospect.Known[values.length];
			for (int i = 0; i < values.length; i++) {
				then[i] = at.known.with(finding, values[i]);
				for (int cause = 0; cause < causes; cause++) {
					shares[i][cause] = at.weights[cause] > 0 && then[i].fits(cause) ? likelihood[values[i]][cause] : 0;
					alive[cause] += shares[i][cause];
				}
			}
			double sum = 0;
			for (int i = 0; i < values.length; i++) {
				double[] weights = shares[i];
				for (int cause = 0; cause < causes; cause++) {
					weights[cause] = alive[cause] == 0 ? 0 : at.weights[cause] * weights[cause] / alive[cause];
					probabilities[i] += weights[cause];
				}
				sum += probabilities[i];
				after[i] = new At(then[i], Beliefs.norm(weights));
			}
			for (int i = 0; i < probabilities.length && sum > 0; i++) {
				probabilities[i] /= sum;
			}
		}

		/** Returns what is found out. */
		public Variable variable() {
			return ahead.findings().get(finding);
		}

		/** Returns a reading for an outcome. */
		public Reading reading(int outcome) {
			return ahead.values(finding).get(values[outcome]);
		}

		@Override
		public String name() {
			return variable().name();
		}

		@Override
		public double cost() {
			return effort.of(finding, at.known);
		}

		@Override
		public int outcomes() {
			return values.length;
		}

		@Override
		public double probability(int outcome) {
			return probabilities[outcome];
		}

		@Override
		public Position after(int outcome) {
			return after[outcome];
		}
	}
}
