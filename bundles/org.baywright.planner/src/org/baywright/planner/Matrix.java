package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.stream.IntStream;

/**
 * Causes, one of which it is, and checks, each of which shows by itself something of the cause. How likely an outcome is
 * depends on the cause alone.
 */
public final class Matrix {

	/**
	 * A check.
	 *
	 * @param name what it is called
	 * @param cost what it costs, above 0
	 * @param likelihood for each outcome and each cause how likely that outcome is under that cause; for each cause the outcomes
	 *     add up to 1
	 * @param ends for each outcome whether nothing more is looked for after it
	 */
	public record Check(String name, double cost, double[][] likelihood, boolean[] ends) {

		/** A check that shows for each cause one outcome, and after which the search always goes on. */
		public static Check certain(String name, double cost, int... outcomes) {
			int count = Arrays.stream(outcomes).max().orElse(0) + 1;
			double[][] likelihood = new double[count][outcomes.length];
			for (int cause = 0; cause < outcomes.length; cause++) {
				likelihood[outcomes[cause]][cause] = 1;
			}
			return new Check(name, cost, likelihood, new boolean[count]);
		}

		/** Returns the check with outcomes after which nothing more is looked for. */
		public Check ending(int... outcomes) {
			boolean[] now = ends.clone();
			for (int outcome : outcomes) {
				now[outcome] = true;
			}
			return new Check(name, cost, likelihood, now);
		}
	}

	/** Outcome of a check that is not done. */
	private static final int OPEN = -1;
	/** Outcome of a check that makes no difference. */
	private static final int IDLE = -2;

	private final double[] prior;
	private final List<Check> checks;
	private final boolean certain;

	/**
	 * @param prior how likely each cause is, above 0; they need not add up to 1
	 * @throws IllegalArgumentException if a number is out of its range
	 */
	public Matrix(double[] prior, List<Check> checks) {
		this.prior = prior.clone();
		this.checks = List.copyOf(checks);
		for (double weight : prior) {
			require(weight > 0 && weight < Double.POSITIVE_INFINITY, "A cause is as likely as a number above 0.");
		}
		boolean every = true;
		for (Check check : checks) {
			require(check.cost() > 0 && check.cost() < Double.POSITIVE_INFINITY, "Check " + check.name() + " costs nothing.");
			for (int cause = 0; cause < prior.length; cause++) {
				double sum = 0;
				for (double[] row : check.likelihood()) {
					require(row[cause] >= 0, "Check " + check.name() + " has an outcome that is less likely than never.");
					sum += row[cause];
					every &= row[cause] == 0 || row[cause] == 1;
				}
				require(Math.abs(sum - 1) < 1e-9, "What check " + check.name() + " shows under a cause does not add up to 1.");
			}
		}
		certain = every;
	}

	private static void require(boolean right, String message) {
		if (!right) {
			throw new IllegalArgumentException(message);
		}
	}

	/** Returns the position in which nothing is known. */
	public Position begin() {
		BitSet all = new BitSet();
		all.set(0, prior.length);
		int[] open = new int[checks.size()];
		Arrays.fill(open, OPEN);
		return new At(open, all, false);
	}

	/** What is known when some checks are done. */
	private final class At implements Position {

		private final int[] outcomes;
		private final BitSet left;
		private final boolean ended;
		private final double[] weights;

		At(int[] outcomes, BitSet left, boolean ended) {
			this.left = left;
			this.ended = ended;
			this.outcomes = outcomes.clone();
			for (int check = 0; check < outcomes.length; check++) {
				if (isAlike(check)) {
					this.outcomes[check] = this.outcomes[check] == OPEN && canEnd(check) ? OPEN : IDLE;
				}
			}
			weights = new double[prior.length];
			double sum = 0;
			for (int cause = left.nextSetBit(0); cause >= 0; cause = left.nextSetBit(cause + 1)) {
				// in the order of the checks, whatever the order in which they were done
				double weight = prior[cause];
				for (int check = 0; check < outcomes.length; check++) {
					if (this.outcomes[check] >= 0) {
						weight *= checks.get(check).likelihood()[this.outcomes[check]][cause];
					}
				}
				weights[cause] = weight;
				sum += weight;
			}
			for (int cause = 0; cause < weights.length; cause++) {
				weights[cause] /= sum;
			}
		}

		/** Returns whether a check tells none of the causes that are left from another. */
		private boolean isAlike(int check) {
			for (double[] row : checks.get(check).likelihood()) {
				double first = row[left.nextSetBit(0)];
				for (int cause = left.nextSetBit(0); cause >= 0; cause = left.nextSetBit(cause + 1)) {
					if (row[cause] != first) {
						return false;
					}
				}
			}
			return true;
		}

		private boolean canEnd(int check) {
			for (int outcome = 0; outcome < checks.get(check).ends().length; outcome++) {
				if (checks.get(check).ends()[outcome] && checks.get(check).likelihood()[outcome][left.nextSetBit(0)] > 0) {
					return true;
				}
			}
			return false;
		}

		@Override
		public Object key() {
			return ended ? Boolean.TRUE : List.of(left, Arrays.stream(outcomes).boxed().toList());
		}

		@Override
		public List<Step> steps() {
			List<Step> steps = new ArrayList<>();
			for (int check = 0; check < outcomes.length && !ended; check++) {
				if (outcomes[check] == OPEN) {
					steps.add(new Done(this, check));
				}
			}
			return steps;
		}

		@Override
		public double[] likelihoods() {
			return weights.clone();
		}

		@Override
		public double uncertainty() {
			return ended ? 0 : Position.entropy(weights);
		}

		@Override
		public double most() {
			return steps().stream().mapToDouble(Step::cost).sum();
		}

		/**
		 * No way of asking tells the groups that can be told apart with fewer questions than the best code (Huffman 1952), and
		 * each costs at least what the cheapest does (Pattipati and Alexandridis 1990).
		 */
		@Override
		public double bound() {
			double cheapest = Double.POSITIVE_INFINITY;
			int most = 2;
			boolean endsForOne = true;
			for (int check = 0; check < outcomes.length && !ended; check++) {
				if (outcomes[check] == OPEN) {
					cheapest = Math.min(cheapest, checks.get(check).cost());
					most = Math.max(most, checks.get(check).likelihood().length);
					endsForOne &= endsForOne(check);
				}
			}
			if (cheapest == Double.POSITIVE_INFINITY) {
				return 0;
			}
			return cheapest * (certain && endsForOne ? Math.max(1, codeLength(groups(), most)) : 1);
		}

		/** Returns whether each outcome of a check that ends the search leaves one cause. */
		private boolean endsForOne(int check) {
			for (int outcome = 0; outcome < checks.get(check).ends().length; outcome++) {
				if (checks.get(check).ends()[outcome]) {
					double[] row = checks.get(check).likelihood()[outcome];
					if (left.stream().filter(cause -> row[cause] > 0).count() > 1) {
						return false;
					}
				}
			}
			return true;
		}

		/** Returns how likely each set of causes is that no open check tells apart. */
		private Collection<Double> groups() {
			Map<List<Integer>, Double> groups = new LinkedHashMap<>();
			for (int cause = left.nextSetBit(0); cause >= 0; cause = left.nextSetBit(cause + 1)) {
				List<Integer> shown = new ArrayList<>();
				for (int check = 0; check < outcomes.length; check++) {
					if (outcomes[check] == OPEN) {
						shown.add(shown(check, cause));
					}
				}
				groups.merge(shown, weights[cause], Double::sum);
			}
			return groups.values();
		}
	}

	/** A check that is done at a position. */
	private final class Done implements Position.Step {

		private final At at;
		private final int number;
		private final Check check;

		Done(At at, int number) {
			this.at = at;
			this.number = number;
			check = checks.get(number);
		}

		@Override
		public String name() {
			return check.name();
		}

		@Override
		public double cost() {
			return check.cost();
		}

		@Override
		public int outcomes() {
			return check.likelihood().length;
		}

		@Override
		public double probability(int outcome) {
			double sum = 0;
			for (int cause = at.left.nextSetBit(0); cause >= 0; cause = at.left.nextSetBit(cause + 1)) {
				sum += at.weights[cause] * check.likelihood()[outcome][cause];
			}
			return sum;
		}

		@Override
		public Position after(int outcome) {
			int[] outcomes = at.outcomes.clone();
			outcomes[number] = outcome;
			BitSet left = new BitSet();
			at.left.stream().filter(cause -> check.likelihood()[outcome][cause] > 0).forEach(left::set);
			return new At(outcomes, left, check.ends()[outcome]);
		}
	}

	/**
	 * Returns how well all checks together tell the causes apart.
	 *
	 * @param sound the cause that stands for a sound vehicle; the others are faults
	 * @throws IllegalStateException if what a check shows under a cause is not certain
	 */
	public Testability testability(int sound) {
		Map<List<Integer>, List<Integer>> alike = new LinkedHashMap<>();
		for (int cause = 0; cause < prior.length; cause++) {
			alike.computeIfAbsent(shown(cause), key -> new ArrayList<>()).add(cause);
		}
		double faults = Arrays.stream(prior).sum() - prior[sound];
		List<List<Integer>> groups = alike.values().stream().filter(group -> !group.contains(sound)).toList();
		double detected = weight(groups);
		return new Testability(faults == 0 ? 1 : detected / faults,
				detected == 0 ? 1 : weight(groups.stream().filter(group -> group.size() == 1).toList()) / detected, groups);
	}

	private double weight(List<List<Integer>> groups) {
		return groups.stream().flatMap(List::stream).mapToDouble(cause -> prior[cause]).sum();
	}

	private List<Integer> shown(int cause) {
		return IntStream.range(0, checks.size()).mapToObj(check -> shown(check, cause)).toList();
	}

	private int shown(int check, int cause) {
		double[][] likelihood = checks.get(check).likelihood();
		for (int outcome = 0; outcome < likelihood.length; outcome++) {
			if (likelihood[outcome][cause] == 1) {
				return outcome;
			}
		}
		throw new IllegalStateException("what check " + checks.get(check).name() + " shows is not certain");
	}

	/**
	 * Returns the mean length of the best code for events (Huffman 1952).
	 *
	 * @param events how likely each is
	 * @param signs how many signs the code has, 2 or more
	 */
	public static double codeLength(Collection<Double> events, int signs) {
		PriorityQueue<Double> queue = new PriorityQueue<>(events);
		while (queue.size() > 1 && (queue.size() - 1) % (signs - 1) != 0) {
			queue.add(0.0);
		}
		double length = 0;
		while (queue.size() > 1) {
			double sum = 0;
			for (int i = 0; i < signs; i++) {
				sum += queue.remove();
			}
			length += sum;
			queue.add(sum);
		}
		return length;
	}
}
