package org.baywright.planner;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.run.Prospects;
import org.baywright.model.IndexSet;
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
	private final Optional<Effort.Doing> scan;
	private At begin;

	/**
	 * What was done on the vehicle.
	 *
	 * @param states what it is in, value by state
	 * @param scanned whether all modules were read at once
	 * @param mended faults whose repair did not put it right
	 */
	public record Before(Map<String, String> states, boolean scanned, Set<String> mended) {

		/** Nothing was done, and nobody knows what it is in. */
		public static final Before NOTHING = new Before(Map.of(), false, Set.of());

		public Before {
			states = Map.copyOf(states);
			mended = Set.copyOf(mended);
		}
	}

	private Diagnosis(RuleBase base, Prospect.Ahead ahead, List<Reading> complaint, Before before) {
		this.ahead = ahead;
		beliefs = new Beliefs(base, ahead);
		effort = new Effort(base, ahead, complaint);
		scan = effort.scan();
		begin = new At(ahead.known(), beliefs.prior(before.mended()), before.states(), before.scanned());
	}

	/**
	 * Begins on a vehicle of whose state nothing is known.
	 *
	 * @param family name of the vehicle's family
	 * @param readings what is known of the vehicle
	 * @return nothing if no vehicle has all of it
	 */
	public static Optional<Diagnosis> of(RuleBase base, String family, List<Reading> readings) {
		return of(base, Prospects.of(base, family), readings, Before.NOTHING);
	}

	/**
	 * Begins on a family whose rules are ready.
	 *
	 * @param before what was done on the vehicle
	 */
	public static Optional<Diagnosis> of(RuleBase base, Prospect prospect, List<Reading> readings, Before before) {
		List<Reading> complaint = readings.stream().filter(reading -> isComplaint(base, reading)).toList();
		Optional<Prospect.Ahead> first = prospect.begin(complaint);
		if (first.isEmpty()) {
			return Optional.empty();
		}
		// what nobody asks for from the complaint may matter all the same
		List<Reading> beside = readings.stream().filter(reading -> !complaint.contains(reading) && first.get().number(Variable.of(base, reading)) < 0).toList();
		List<Reading> known = Stream.concat(complaint.stream(), beside.stream()).toList();
		Optional<Prospect.Ahead> ahead = beside.isEmpty() ? first : prospect.begin(known);
		return ahead.map(found -> new Diagnosis(base, found, known, before)).flatMap(diagnosis -> diagnosis.goOn(base, readings.stream().filter(reading -> !known.contains(reading)).toList()))
				.filter(diagnosis -> beside.isEmpty() || prospect.begin(readings).isPresent());
	}

	/** Returns whether a reading tells what the vehicle is or what is wrong with it, and not what was found out on the way. */
	private static boolean isComplaint(RuleBase base, Reading reading) {
		return reading instanceof Reading.SignSeen seen ? seen.present() : Variable.of(base, reading).kind() == Variable.Kind.TRAIT;
	}

	/** Each finding sharpens what is believed, as it does in a plan. */
	private Optional<Diagnosis> goOn(RuleBase base, List<Reading> findings) {
		for (Reading reading : findings) {
			int finding = ahead.number(Variable.of(base, reading));
			OptionalInt value = finding < 0 ? OptionalInt.empty() : ahead.value(finding, reading);
			if (value.isPresent() && !begin.known.isMade(finding)) {
				Finding step = new Finding(begin, finding);
				OptionalInt outcome = IntStream.range(0, step.values.length).filter(each -> step.values[each] == value.getAsInt()).findFirst();
				if (outcome.isEmpty()) {
					return Optional.empty();
				}
				begin = step.after[outcome.getAsInt()];
			}
		}
		return Optional.of(this);
	}

	/** Returns the faults that it may be, in the order of the rule base. */
	public List<String> causes() {
		return ahead.causes();
	}

	/**
	 * Returns what to do next, as things are.
	 *
	 * @param cancelled asked now and then whether to stop
	 */
	public Proposals next(Proposals.Care care, BooleanSupplier cancelled) {
		return Proposals.at(begin(), effort.rate(), care, cancelled);
	}

	/**
	 * Returns what to do to the end, as things are; see {@link Proposals#whole}.
	 *
	 * @param cancelled asked now and then whether to stop
	 */
	public Search.Found whole(BooleanSupplier cancelled) {
		return Proposals.whole(begin(), effort.rate(), cancelled);
	}

	/** Returns what a minute of work costs, in the project's own money; 1 where the workshop says nothing. */
	public double rate() {
		return effort.rate();
	}

	/** Returns something that is asked for and follows from what is known, as that leaves nothing else; nobody has to look. */
	public Optional<Reading> follows() {
		return begin.steps().stream().findFirst().flatMap(step -> step instanceof Finding finding ? finding.follows() : Optional.empty());
	}

	/** Returns where one stands with what is known. */
	public At begin() {
		return begin;
	}

	/** What is found so far. */
	public final class At implements Position {

		private final Prospect.Known known;
		private final double[] weights;
		private final BitSet left = new BitSet();
		private final Map<String, String> states;
		private final boolean scanned;
		private double guess = -1;
		private double[] least;
		private List<Step> steps;
		private Object key;
		private double bound = -1;

		private At(Prospect.Known known, double[] weights, Map<String, String> states, boolean scanned) {
			this.known = known;
			this.states = states;
			this.scanned = scanned;
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
		@Override
		public double[] likelihoods() {
			return weights.clone();
		}

		/** What was found and no longer matters makes no difference. */
		@Override
		public Object key() {
			if (key == null) {
				key = isSettled() ? known.said() : List.of(known.said(), known.mattering(left), rounded(), states, scanned, paid());
			}
			return key;
		}

		/** Returns what may come to be asked for and is seen with something that was done. */
		private BitSet paid() {
			BitSet paid = new BitSet();
			Arrays.stream(known.ahead(left)).filter(finding -> effort.isPaid(finding, known)).forEach(paid::set);
			return paid;
		}

		private List<Long> rounded() {
			return Arrays.stream(weights).mapToObj(weight -> Math.round(weight * ROUNDED)).toList();
		}

		@Override
		public List<Step> steps() {
			if (steps == null) {
				int[] open = isSettled() ? new int[0] : Arrays.stream(known.open(left)).filter(finding -> effort.doing(finding).atHand()).toArray();
				// what a doing shows beside what it was done for is seen anyway
				int[] seen = Arrays.stream(open).filter(this::isSeen).limit(1).toArray();
				steps = Stream.concat(Arrays.stream(seen.length > 0 ? seen : harmless(open)).<Step>mapToObj(finding -> new Finding(this, finding)),
						seen.length == 0 && readsSeveral(open) ? scan.map(doing -> new Scan(this, doing)).stream() : Stream.empty()).filter(step -> step.outcomes() > 0).toList();
			}
			return steps;
		}

		/** What spoils something else that is asked for waits until that is found out. */
		private int[] harmless(int[] open) {
			Set<Integer> asked = Arrays.stream(open).boxed().collect(Collectors.toSet());
			int[] harmless = Arrays.stream(open).filter(finding -> Arrays.stream(effort.doing(finding).disturbs()).noneMatch(asked::contains)).toArray();
			return harmless.length == 0 ? open : harmless;
		}

		private boolean isSeen(int finding) {
			return effort.isPaid(finding, known) || scanned && effort.doing(finding).reads() || follows(finding);
		}

		private boolean follows(int finding) {
			int[] possible = effort.mayFollow(finding) ? known.possible(finding) : new int[0];
			IndexSet meant = possible.length == 1 ? ahead.means(finding, possible[0]) : IndexSet.EMPTY;
			return !meant.isEmpty() && meant.first() == meant.last();
		}

		private boolean readsSeveral(int[] open) {
			return scan.isPresent() && !scanned && Arrays.stream(open).mapToObj(effort::doing).filter(Effort.Doing::reads).distinct().limit(2).count() > 1;
		}

		/** Returns what is asked for and cannot be found out here: no tool for it is at hand, or nobody who may. */
		public List<Variable> beyond() {
			return isSettled() ? List.of() : Arrays.stream(known.open(left)).filter(finding -> !effort.doing(finding).atHand()).mapToObj(ahead.findings()::get).toList();
		}

		@Override
		public double bound() {
			if (bound < 0) {
				bound = isSettled() || known.open(left).length == 0 ? 0 : expectedAtLeast();
			}
			return bound;
		}

		private double[] least() {
			if (least == null) {
				least = known.least(effort.least(known, scanned), effort.together(), left);
			}
			return least;
		}

		private double expectedAtLeast() {
			double[] least = least();
			double sum = 0;
			for (int cause = 0; cause < weights.length; cause++) {
				sum += weights[cause] == 0 ? 0 : weights[cause] * least[cause];
			}
			return Double.isFinite(sum) ? sum : 0;
		}

		/**
		 * Each cause is looked for by what confirms it at the least cost, in the order of likelihood over cost, until one is
		 * confirmed: the best order for one-fault checks (named in the operations research literature of the 1950s to 1970s; from memory).
		 */
		@Override
		public double guess() {
			if (guess < 0) {
				boolean over = isSettled() || known.open(left).length == 0;
				double[] confirming = over ? new double[0] : known.confirming(effort.least(known, scanned), effort.together());
				List<Integer> order = IntStream.range(0, confirming.length).filter(cause -> weights[cause] > 0 && Double.isFinite(confirming[cause])).boxed()
						.sorted(Comparator.comparing(cause -> confirming[cause] / weights[cause])).toList();
				double left = 1;
				guess = 0;
				for (int cause : order) {
					guess += left * confirming[cause];
					left -= weights[cause];
				}
			}
			return guess;
		}

		/** Whatever is found, nothing more is asked for than what may come to be asked for now. */
		@Override
		public double most() {
			return effort.of(known.ahead(left), known);
		}

		@Override
		public double uncertainty() {
			return isSettled() ? 0 : Position.entropy(weights);
		}

		/** Returns how much could not be known of the cause at most, in bits. */
		private double uncertain() {
			int causes = 0;
			for (double weight : weights) {
				causes += weight > 0 ? 1 : 0;
			}
			return Math.log(Math.max(1, causes)) / Math.log(2);
		}
	}

	/** Reading at once all modules that answer: what they say is then seen one by one. */
	public final class Scan implements Position.Step {

		private final At at;
		private final Effort.Doing doing;

		private Scan(At at, Effort.Doing doing) {
			this.at = at;
			this.doing = doing;
		}

		/** Returns what it shows that is still asked for. */
		public List<Variable> shows() {
			return Arrays.stream(at.known.open(at.left)).filter(finding -> effort.doing(finding).reads()).mapToObj(ahead.findings()::get).toList();
		}

		@Override
		public String name() {
			return "all modules";
		}

		@Override
		public double cost() {
			return effort.cost(doing);
		}

		@Override
		public double minutes() {
			return doing.minutes();
		}

		@Override
		public int outcomes() {
			return 1;
		}

		@Override
		public double probability(int outcome) {
			return 1;
		}

		@Override
		public Position after(int outcome) {
			return new At(at.known, at.weights, at.states, true);
		}
	}

	/** Something to find out. */
	public final class Finding implements Position.Step {

		private final At at;
		private final int finding;
		private final Effort.Doing doing;
		private final int[] values;
		private final At[] after;
		private final double[] probabilities;

		private Finding(At at, int finding) {
			this.at = at;
			this.finding = finding;
			doing = effort.doing(finding);
			values = at.known.possible(finding);
			after = new At[values.length];
			probabilities = new double[values.length];
			double[][] likelihood = beliefs.likelihood(finding);
			Map<String, String> states = at.isSeen(finding) ? at.states : effort.after(doing, at.states);
			int causes = at.weights.length;
			double[] alive = new double[causes];
			double[][] shares = new double[values.length][causes];
			Prospect.Known[] then = new Prospect.Known[values.length];
			for (int i = 0; i < values.length; i++) {
				then[i] = undisturbed(at.known.with(finding, values[i]));
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
				after[i] = new At(then[i], Beliefs.norm(weights), states, at.scanned);
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

		/** Returns all values of the finding's own domain that an outcome stands for. */
		public IndexSet means(int outcome) {
			return ahead.means(finding, values[outcome]);
		}

		@Override
		public String name() {
			return variable().name();
		}

		/** What the doing disturbs and is not found yet is lost. */
		private Prospect.Known undisturbed(Prospect.Known after) {
			Prospect.Known left = after;
			for (int lost : doing.disturbs()) {
				left = left.isMade(lost) ? left : left.without(lost);
			}
			return left;
		}

		/** Returns what the same doing shows that is still asked for, itself too. */
		public List<Variable> shows() {
			return Arrays.stream(at.known.open(at.left)).filter(other -> effort.doing(other).number() == doing.number()).mapToObj(ahead.findings()::get).toList();
		}

		/** Returns what is asked for and is lost with it. */
		public List<Variable> disturbs() {
			return Arrays.stream(doing.disturbs()).filter(lost -> Arrays.stream(at.known.open(at.left)).anyMatch(open -> open == lost)).mapToObj(ahead.findings()::get).toList();
		}

		@Override
		public boolean isDisturbing() {
			int[] open = at.known.open(at.left);
			return Arrays.stream(doing.touches()).anyMatch(touched -> Arrays.stream(open).anyMatch(asked -> asked == touched));
		}

		/** Returns whether it is seen anyway, with what was done before. */
		public boolean isSeen() {
			return at.isSeen(finding);
		}

		/** Returns what is found in any case, as what was found before leaves nothing else; nobody has to look. */
		public Optional<Reading> follows() {
			return at.follows(finding) ? Optional.of(reading(0)) : Optional.empty();
		}

		@Override
		public String doing() {
			return "" + doing.number();
		}

		@Override
		public double cost() {
			return isSeen() ? 0 : effort.cost(doing) + effort.rate() * effort.minutesTo(doing, at.states);
		}

		@Override
		public double minutes() {
			return isSeen() ? 0 : doing.minutes() + effort.minutesTo(doing, at.states);
		}

		@Override
		public double waiting() {
			return isSeen() ? 0 : doing.waiting();
		}

		/** What is found tells of the cause no more than there is to tell of what is found, unless the search ends there. */
		@Override
		public double tellsAtMost(double before) {
			double bits = Position.entropy(probabilities);
			for (int i = 0; i < values.length && bits < before; i++) {
				bits += probabilities[i] > 0 && after[i].isSettled() ? probabilities[i] * after[i].uncertain() : 0;
			}
			return Math.min(before, bits);
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
