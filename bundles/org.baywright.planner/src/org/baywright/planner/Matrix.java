package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
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
	private final double[] costs;
	private final Shown[] shown;
	/** For each cause and each check what is equal where the check shows each outcome as likely. */
	private final int[][] column;
	/** For each check whether some outcome ends the search. */
	private final boolean[] mayEnd;
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
		mayEnd = new boolean[checks.size()];
		column = new int[prior.length][checks.size()];
		for (int check = 0; check < mayEnd.length; check++) {
			number(check);
			for (boolean ends : checks.get(check).ends()) {
				mayEnd[check] |= ends;
			}
		}
		costs = checks.stream().mapToDouble(Check::cost).toArray();
		shown = checks.stream().map(check -> new Shown(check.likelihood(), prior.length)).toArray(Shown[]::new);
	}

	private void number(int check) {
		Map<List<Double>, Integer> numbers = new HashMap<>();
		for (int cause = 0; cause < prior.length; cause++) {
			int of = cause;
			List<Double> likely = Arrays.stream(checks.get(check).likelihood()).map(row -> row[of]).toList();
			column[cause][check] = numbers.computeIfAbsent(likely, key -> numbers.size());
		}
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
		private final Shown.Weights weights;
		private final Object key;
		private final double most;
		private List<Step> steps;

		At(int[] outcomes, BitSet left, boolean ended) {
			this.left = left;
			this.ended = ended;
			this.outcomes = outcomes.clone();
			int[] causes = numbers(left);
			for (int check : alike(causes)) {
				this.outcomes[check] = outcomes[check] == OPEN && canEnd(check, causes[0]) ? OPEN : IDLE;
			}
			// in the order of the checks, whatever the order in which they were done
			double[] shares = new double[prior.length];
			for (int cause : causes) {
				shares[cause] = prior[cause];
			}
			for (int check = 0; check < outcomes.length; check++) {
				double[] likely = this.outcomes[check] < 0 ? null : checks.get(check).likelihood()[this.outcomes[check]];
				for (int i = 0; likely != null && i < causes.length; i++) {
					shares[causes[i]] *= likely[causes[i]];
				}
			}
			double sum = 0;
			for (int cause : causes) {
				sum += shares[cause];
			}
			for (int cause : causes) {
				shares[cause] /= sum;
			}
			weights = Shown.Weights.of(causes, shares);
			key = ended ? Boolean.TRUE : new Key(left, this.outcomes, 31 * left.hashCode() + Arrays.hashCode(this.outcomes));
			double all = 0;
			for (int check = 0; check < outcomes.length && !ended; check++) {
				all += this.outcomes[check] == OPEN ? costs[check] : 0;
			}
			most = all;
		}

		/** Returns the checks that tell none of some causes from another; those that told no more causes apart before are left out. */
		private int[] alike(int[] causes) {
			int[] alike = new int[outcomes.length];
			int count = 0;
			for (int check = 0; check < outcomes.length; check++) {
				alike[count] = check;
				count += outcomes[check] == IDLE ? 0 : 1;
			}
			for (int i = 1; i < causes.length && count > 0; i++) {
				int kept = 0;
				int[] first = column[causes[0]];
				int[] other = column[causes[i]];
				for (int j = 0; j < count; j++) {
					int check = alike[j];
					alike[kept] = check;
					kept += first[check] == other[check] ? 1 : 0;
				}
				count = kept;
			}
			return Arrays.copyOf(alike, count);
		}

		private static int[] numbers(BitSet set) {
			int[] numbers = new int[set.cardinality()];
			for (int i = 0, next = set.nextSetBit(0); i < numbers.length; i++, next = set.nextSetBit(next + 1)) {
				numbers[i] = next;
			}
			return numbers;
		}

		private boolean canEnd(int check, int cause) {
			for (int outcome = 0; mayEnd[check] && outcome < checks.get(check).ends().length; outcome++) {
				if (checks.get(check).ends()[outcome] && checks.get(check).likelihood()[outcome][cause] > 0) {
					return true;
				}
			}
			return false;
		}

		@Override
		public Object key() {
			return key;
		}

		@Override
		public List<Step> steps() {
			if (steps == null) {
				steps = new ArrayList<>(outcomes.length);
				for (int check = 0; check < outcomes.length && !ended; check++) {
					if (outcomes[check] == OPEN) {
						steps.add(new Done(this, check));
					}
				}
			}
			return steps;
		}

		@Override
		public double[] likelihoods() {
			return weights.shares().clone();
		}

		@Override
		public double uncertainty() {
			return ended ? 0 : weights.allBits();
		}

		@Override
		public double most() {
			return most;
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
					cheapest = Math.min(cheapest, costs[check]);
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
			int[] groupOf = new int[prior.length];
			int count = 1;
			for (int check = 0; check < outcomes.length && count < weights.left().length; check++) {
				if (outcomes[check] == OPEN) {
					Map<Long, Integer> split = new HashMap<>();
					for (int cause : weights.left()) {
						groupOf[cause] = split.computeIfAbsent((long) groupOf[cause] << Integer.SIZE | shown(check, cause), key -> split.size());
					}
					count = split.size();
				}
			}
			Map<Integer, Double> groups = new LinkedHashMap<>();
			for (int cause : weights.left()) {
				groups.merge(groupOf[cause], weights.shares()[cause], Double::sum);
			}
			return groups.values();
		}
	}

	/** @param hash made once, as positions are looked up often */
	private record Key(BitSet left, int[] outcomes, int hash) {

		@Override
		public boolean equals(Object other) {
			return other instanceof Key key && hash == key.hash && Arrays.equals(outcomes, key.outcomes) && left.equals(key.left);
		}

		@Override
		public int hashCode() {
			return hash;
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
			return costs[number];
		}

		@Override
		public int outcomes() {
			return check.likelihood().length;
		}

		@Override
		public double probability(int outcome) {
			double sum = 0;
			for (int cause : at.weights.left()) {
				sum += at.weights.shares()[cause] * check.likelihood()[outcome][cause];
			}
			return sum;
		}

		/** What a check shows tells of the cause no more than there is to tell, unless the search ends there. */
		@Override
		public double tellsAtMost(double before) {
			return mayEnd[number] ? before : Math.min(before, shown[number].most());
		}

		@Override
		public double uncertaintyAfter() {
			return shown[number].uncertaintyAfter(at.weights, check.ends());
		}

		@Override
		public Position after(int outcome) {
			int[] outcomes = at.outcomes.clone();
			outcomes[number] = outcome;
			BitSet left = new BitSet();
			double[] likely = check.likelihood()[outcome];
			for (int cause : at.weights.left()) {
				if (likely[cause] > 0) {
					left.set(cause);
				}
			}
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
