package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.run.Prospects;
import org.baywright.model.Fault;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/**
 * The search for the cause on one vehicle, by the rules. One fault is the cause, of those that rules may confirm from the
 * complaint, or something else. A result that the rules hold against a fault rules it out. It ends when the rules confirm a
 * fault or refer, or when nothing that can still be found would make them say more.
 */
public final class Diagnosis {

	/** Likelihoods that differ by less than one part of this are alike. */
	private static final double ROUNDED = 1e9;

	private final Prospect prospect;
	private final Prospect.Known begin;
	private final List<String> causes;
	private final Beliefs beliefs;
	private final Effort effort;
	private final double[] prior;
	private final double everything;

	/** @param bare the same without the signs, so that no complaint limits what may be asked for */
	private Diagnosis(RuleBase base, Prospect prospect, Prospect.Known begin, Prospect.Known bare, double rate) {
		this.prospect = prospect;
		this.begin = begin;
		Predicate<String> open = fault -> !begin.has(new Verdict(fault, VerdictKind.CLEARED)) && begin.isAsked(fault) && begin.canConfirm(fault);
		causes = base.faults().stream().map(Fault::name).filter(open).toList();
		beliefs = new Beliefs(base, prospect, begin, causes);
		prior = beliefs.prior();
		effort = new Effort(base, rate);
		everything = bare.open(causes).stream().mapToDouble(finding -> effort.of(finding, bare)).sum();
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
		Prospect prospect = Prospects.of(base, family);
		Optional<Prospect.Known> bare = prospect.begin(readings.stream().filter(reading -> !(reading instanceof Reading.SignSeen)).toList());
		return prospect.begin(readings).map(known -> new Diagnosis(base, prospect, known, bare.orElseThrow(), rate));
	}

	/** Returns the faults that it may be, in the order of the rule base. */
	public List<String> causes() {
		return causes;
	}

	/** Returns where one stands at the beginning. */
	public At begin() {
		return new At(begin, prior);
	}

	/** What is found so far. */
	public final class At implements Position {

		private final Prospect.Known known;
		private final double[] weights;
		private List<Step> steps;
		private Object key;

		private At(Prospect.Known known, double[] weights) {
			this.known = known;
			this.weights = weights;
		}

		/** Returns what the rules derive, sorted. */
		public List<Verdict> verdicts() {
			return known.verdicts();
		}

		/** Returns whether the rules have come to an end: a fault is confirmed, or somebody else goes on. */
		public boolean isSettled() {
			return known.verdicts().stream().anyMatch(verdict -> verdict.isEnd() && known.isLasting(verdict));
		}

		/** Returns how likely it is each of the causes, in their order, and last that it is something else. */
		public double[] likelihoods() {
			return weights.clone();
		}

		/** What was found and no longer matters makes no difference. */
		@Override
		public Object key() {
			if (key == null) {
				key = isSettled() ? known.verdicts() : List.of(known.verdicts(), known.mattering(left()), rounded());
			}
			return key;
		}

		private List<Long> rounded() {
			return Arrays.stream(weights).mapToObj(weight -> Math.round(weight * ROUNDED)).toList();
		}

		private List<String> left() {
			List<String> left = new ArrayList<>();
			for (int cause = 0; cause < causes.size(); cause++) {
				if (weights[cause] > 0) {
					left.add(causes.get(cause));
				}
			}
			return left;
		}

		@Override
		public List<Step> steps() {
			if (steps == null) {
				steps = isSettled() ? List.of() : known.open(left()).stream().<Step>map(finding -> new Finding(this, finding)).filter(step -> step.outcomes() > 0).toList();
			}
			return steps;
		}

		@Override
		public double bound() {
			return steps().stream().mapToDouble(Step::cost).min().orElse(0);
		}

		/** Whatever is found, nothing more is asked for than what rules ask of a vehicle of which no complaint is known. */
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
		private final Variable variable;
		private final List<Integer> values;
		private final List<At> after = new ArrayList<>();
		private final double[] probabilities;

		private Finding(At at, Variable variable) {
			this.at = at;
			this.variable = variable;
			values = at.known.possible(variable);
			double[][] likelihood = beliefs.likelihood(variable);
			double[] alive = new double[at.weights.length];
			List<double[]> shares = new ArrayList<>();
			List<Prospect.Known> then = new ArrayList<>();
			for (int value : values) {
				Prospect.Known next = at.known.with(variable, value);
				double[] share = new double[at.weights.length];
				for (int cause = 0; cause < share.length; cause++) {
					share[cause] = at.weights[cause] > 0 && fits(next, cause) ? likelihood[value][cause] : 0;
					alive[cause] += share[cause];
				}
				then.add(next);
				shares.add(share);
			}
			probabilities = new double[values.size()];
			for (int i = 0; i < probabilities.length; i++) {
				double[] weights = new double[at.weights.length];
				for (int cause = 0; cause < weights.length; cause++) {
					weights[cause] = alive[cause] == 0 ? 0 : at.weights[cause] * shares.get(i)[cause] / alive[cause];
					probabilities[i] += weights[cause];
				}
				after.add(new At(then.get(i), Beliefs.norm(weights)));
			}
			double sum = Arrays.stream(probabilities).sum();
			for (int i = 0; i < probabilities.length && sum > 0; i++) {
				probabilities[i] /= sum;
			}
		}

		/** Returns whether the rules let a cause be one where these findings are made: they neither clear it nor confirm another alone. */
		private boolean fits(Prospect.Known known, int cause) {
			String fault = cause < causes.size() ? causes.get(cause) : "";
			if (!fault.isEmpty() && known.has(new Verdict(fault, VerdictKind.CLEARED))) {
				return false;
			}
			List<Verdict> confirmed = known.verdicts().stream().filter(verdict -> verdict.kind() == VerdictKind.CONFIRMED && causes.contains(verdict.fault())).toList();
			return confirmed.isEmpty() || confirmed.stream().anyMatch(verdict -> verdict.fault().equals(fault));
		}

		/** Returns what is found out. */
		public Variable variable() {
			return variable;
		}

		/** Returns a reading for an outcome. */
		public Reading reading(int outcome) {
			return prospect.values(variable).get(values.get(outcome));
		}

		@Override
		public String name() {
			return variable.name();
		}

		@Override
		public double cost() {
			return effort.of(variable, at.known);
		}

		@Override
		public int outcomes() {
			return values.size();
		}

		@Override
		public double probability(int outcome) {
			return probabilities[outcome];
		}

		@Override
		public Position after(int outcome) {
			return after.get(outcome);
		}
	}
}
