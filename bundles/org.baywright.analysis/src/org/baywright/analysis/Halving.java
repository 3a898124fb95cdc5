package org.baywright.analysis;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.model.Chain;
import org.baywright.model.Domain;
import org.baywright.model.Fault;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.ValueSet;

/**
 * Where to look next along a chain of check points. The cause lies between the last point that is right and the first
 * that is wrong; the best point leaves as little as possible on its heavier side. A fault weighs one more than the number
 * of jobs in which it was the cause, so that one which was never seen still counts.
 */
public final class Halving {

	private final Map<String, Split> splits = new HashMap<>();
	private final Set<String> decided = new HashSet<>();

	/**
	 * What a test does to a chain.
	 *
	 * @param chain title of the chain
	 * @param best whether no other point of the chain leaves less
	 * @param left the weight on the heavier side of the point as a part of what is left, from 0.5 to 1
	 */
	public record Split(String chain, boolean best, double left) {
	}

	/**
	 * @param base the rules
	 * @param family the family of the vehicle
	 * @param readings what was found on it
	 */
	public Halving(RuleBase base, String family, List<Reading> readings) {
		for (Chain chain : base.chains()) {
			if (base.reach(chain.scope()).contains(family)) {
				split(base, chain, readings);
			}
		}
	}

	/** Returns what the test does to a chain; nothing for a test that is no point of one, or no more worth doing. */
	public Optional<Split> of(String test) {
		return Optional.ofNullable(splits.get(test));
	}

	/**
	 * Returns whether the result of a test follows for its chains from what was found at other points, so that nobody need
	 * make it for them.
	 */
	public boolean isDecided(String test) {
		return decided.contains(test) && !splits.containsKey(test);
	}

	private void split(RuleBase base, Chain chain, List<Reading> readings) {
		List<Chain.Point> points = chain.points();
		int right = -1;
		int wrong = points.size();
		for (int i = 0; i < points.size(); i++) {
			Optional<Boolean> good = isGood(base, points.get(i), readings);
			if (good.isPresent() && good.get()) {
				right = i;
			} else if (good.isPresent()) {
				wrong = Math.min(wrong, i);
			}
		}
		for (int i = 0; i < points.size(); i++) {
			if (i < right || i > wrong) {
				decided.add(points.get(i).test());
			}
		}
		// nothing is wrong so far: what lies behind the last point may be the cause too
		int total = wrong < points.size() ? weight(base, points, right + 1, wrong)
				: weight(base, points, right + 1, points.size() - 1) + faults(base, chain.beyond()) + 1;
		int[] left = new int[wrong];
		int least = total;
		int before = 0;
		for (int i = right + 1; i < wrong; i++) {
			before += faults(base, points.get(i).faults());
			left[i] = Math.max(before, total - before);
			least = Math.min(least, left[i]);
		}
		for (int i = right + 1; i < wrong; i++) {
			splits.merge(points.get(i).test(), new Split(chain.title(), left[i] == least, (double) left[i] / total),
					(one, other) -> one.left() <= other.left() ? one : other);
		}
	}

	private static int weight(RuleBase base, List<Chain.Point> points, int first, int last) {
		int weight = 0;
		for (int i = first; i <= last; i++) {
			weight += faults(base, points.get(i).faults());
		}
		return weight;
	}

	private static int faults(RuleBase base, List<String> faults) {
		return faults.stream().mapToInt(name -> 1 + base.fault(name).map(Fault::seen).orElse(0)).sum();
	}

	private static Optional<Boolean> isGood(RuleBase base, Chain.Point point, List<Reading> readings) {
		Domain domain = base.test(point.test()).orElseThrow().domain();
		for (Reading reading : readings) {
			if (reading.subject().equals(point.test()) && reading instanceof Reading.Measured measured && domain instanceof Domain.Quantity) {
				return Optional.of(meets(ValueSet.Band.closed(measured.value(), measured.value()), point, domain));
			} else if (reading.subject().equals(point.test()) && reading instanceof Reading.Named named) {
				return Optional.of(meets(new ValueSet.Choices(List.of(named.value())), point, domain));
			}
		}
		return Optional.empty();
	}

	private static boolean meets(ValueSet found, Chain.Point point, Domain domain) {
		return point.good().in(domain).meets(found.in(domain));
	}
}
