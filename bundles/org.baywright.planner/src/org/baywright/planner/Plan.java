package org.baywright.planner;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * What to do at a position and after each outcome, to the end. Positions from which the way goes on alike have one plan, so
 * it is a graph without circles and not always a tree.
 */
public final class Plan {

	/** What follows after an outcome. */
	public record Branch(int outcome, double probability, Plan plan) {
	}

	private final Position position;
	private final Optional<Position.Step> step;
	private final List<Branch> branches;
	private final boolean cut;
	private final double expected;
	private final double worst;
	private final double cutShare;

	private Plan(Position position, Optional<Position.Step> step, List<Branch> branches, boolean cut, double expected, double worst) {
		this.position = position;
		this.step = step;
		this.branches = List.copyOf(branches);
		this.cut = cut;
		this.expected = expected;
		this.worst = worst;
		cutShare = cut ? 1 : branches.stream().mapToDouble(branch -> branch.probability() * branch.plan().cutShare).sum();
	}

	static Plan end(Position position) {
		return new Plan(position, Optional.empty(), List.of(), false, 0, 0);
	}

	static Plan cut(Position position) {
		return new Plan(position, Optional.empty(), List.of(), true, position.guess(), position.most());
	}

	static Plan of(Position position, Position.Step step, List<Branch> branches) {
		return new Plan(position, Optional.of(step), branches, false,
				step.cost() + branches.stream().mapToDouble(branch -> branch.probability() * branch.plan().expected).sum(),
				step.cost() + branches.stream().mapToDouble(branch -> branch.plan().worst).max().orElse(0));
	}

	/** Returns where it begins. */
	public Position position() {
		return position;
	}

	/** Returns what to do; nothing at an end, and where it was cut. */
	public Optional<Position.Step> step() {
		return step;
	}

	/** Returns what follows, for each outcome that is possible, in their order. */
	public List<Branch> branches() {
		return branches;
	}

	/** Returns how often one gets to places at which nobody looked how it goes on, from 0 to 1. */
	public double cutShare() {
		return cutShare;
	}

	/** Returns whether nobody looked how it goes on from here: so seldom does one get here. */
	public boolean isCut() {
		return cut;
	}

	/** Returns what is to be expected to the end from here; where it was cut an estimate. */
	public double expectedCost() {
		return expected;
	}

	/**
	 * Returns what is to be expected to the end from here of something that each step takes.
	 *
	 * @param rest what part of the guessed cost is taken for it where the plan was cut
	 */
	public double expected(ToDoubleFunction<Position.Step> of, double rest) {
		return taken(of, plan -> rest * plan.expected, (before, branch, taken) -> before + branch.probability() * taken, new HashMap<>());
	}

	/**
	 * Returns the most of something that each step takes on a way to an end.
	 *
	 * @param rest what part of what everything together costs is taken for it where the plan was cut
	 */
	public double worst(ToDoubleFunction<Position.Step> of, double rest) {
		return taken(of, plan -> rest * plan.worst, (before, branch, taken) -> Math.max(before, taken), new HashMap<>());
	}

	/** Joins what is taken after an outcome to what is taken after those before it. */
	private interface Join {
		double with(double before, Branch branch, double taken);
	}

	private double taken(ToDoubleFunction<Position.Step> of, ToDoubleFunction<Plan> atCut, Join join, Map<Plan, Double> known) {
		Double met = known.get(this);
		if (met == null) {
			double after = 0;
			for (Branch branch : branches) {
				after = join.with(after, branch, branch.plan().taken(of, atCut, join, known));
			}
			met = step.map(of::applyAsDouble).orElse(cut ? atCut.applyAsDouble(this) : 0) + after;
			known.put(this, met);
		}
		return met;
	}

	/** Returns where it ends or was cut, and how often one gets there, from 0 to 1. */
	public Map<Plan, Double> ends() {
		List<Plan> order = new ArrayList<>();
		sort(order, new HashSet<>());
		Map<Plan, Double> reached = new HashMap<>(Map.of(this, 1.0));
		Map<Plan, Double> ends = new LinkedHashMap<>();
		for (int i = order.size() - 1; i >= 0; i--) {
			Plan place = order.get(i);
			double often = reached.get(place);
			if (place.step.isEmpty()) {
				ends.put(place, often);
			}
			place.branches.forEach(branch -> reached.merge(branch.plan(), often * branch.probability(), Double::sum));
		}
		return ends;
	}

	/** Adds each place behind all to which it leads. */
	private void sort(List<Plan> order, Set<Plan> met) {
		if (met.add(this)) {
			branches.forEach(branch -> branch.plan().sort(order, met));
			order.add(this);
		}
	}

	/** Returns what the dearest way to an end costs from here; where it was cut what everything together costs that may be done. */
	public double worstCost() {
		return worst;
	}
}
