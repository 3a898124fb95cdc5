package org.baywright.planner;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Finds the plan of least expected cost: a search in a graph of alternatives and outcomes (AO*; Martelli and Montanari
 * 1973, Nilsson 1980). It always goes on where the best plan so far is not yet complete, at the likeliest such place. When
 * it may look at no more positions, it completes the plan step by step with what tells most for its cost, and says how far
 * from the best it can be.
 */
public final class Search {

	private final BooleanSupplier cancelled;
	private final int completed;
	private final Map<Object, Node> nodes = new HashMap<>();
	private int expanded;

	private Search(int completed, BooleanSupplier cancelled) {
		this.completed = completed;
		this.cancelled = cancelled;
	}

	/**
	 * What was found.
	 *
	 * @param plan what to do
	 * @param cost what is to be expected of the plan
	 * @param least what no plan can do better than; the cost itself if the plan is the best
	 * @param positions how many positions were looked at closely
	 */
	public record Found(Plan plan, double cost, double least, int positions) {

		/** Returns whether no plan is better. */
		public boolean isBest() {
			return gap() == 0;
		}

		/** Returns by which share of the least cost the best plan may be better at most: 0.03 for three of a hundred. */
		public double gap() {
			return cost - least <= ROUNDING * Math.max(1, cost) ? 0 : least == 0 ? Double.POSITIVE_INFINITY : (cost - least) / least;
		}
	}

	/** Positions that are looked at to complete a plan, beside the budget. */
	static final int COMPLETED = 1000;
	/** After how many positions a search is given up whose bound is below this share of what is guessed; ours, from the examples. */
	private static final int SOME = 150;
	private static final double FAR = 0.35;
	/** What adding the same numbers in another order may change. */
	private static final double ROUNDING = 1e-9;
	/** By what share two numbers may differ that rounding alone may have set apart; more than any sum of roundings. */
	private static final double CLOSE = 1e-6;

	/**
	 * Searches.
	 *
	 * @param budget positions to look at closely, 0 or more; with 0 each step is what tells most for its cost
	 * @param cancelled asked now and then whether to stop
	 * @throws CancellationException if it was stopped
	 */
	public static Found from(Position root, int budget, BooleanSupplier cancelled) {
		return from(root, budget, COMPLETED, cancelled);
	}

	/**
	 * Searches.
	 *
	 * @param completed positions that are looked at to complete a plan, beside the budget; where the plan does not get it says what it guesses
	 */
	static Found from(Position root, int budget, int completed, BooleanSupplier cancelled) {
		return new Search(completed, cancelled).find(root, budget, Optional::empty, false);
	}

	/**
	 * Searches for a plan that begins with a given step unless the best is found. A search that is still far from an end after some
	 * positions is given up.
	 *
	 * @param first asked for the step if the best is not found
	 */
	static Found beginning(Position root, int budget, int completed, Supplier<Optional<Position.Step>> first, BooleanSupplier cancelled) {
		return new Search(completed, cancelled).find(root, budget, first, true);
	}

	/** A position in the graph. */
	private static final class Node {
		private final Position position;
		private final List<Node> parents = new ArrayList<>();
		private List<Way> ways;
		private Way best;
		private double least;
		private boolean solved;

		Node(Position position) {
			this.position = position;
			least = position.bound();
		}
	}

	/** A step from a position, with the positions that follow. */
	private record Way(Position.Step step, int[] outcomes, Node[] after) {

		double least() {
			double sum = step.cost();
			for (int i = 0; i < after.length; i++) {
				sum += step.probability(outcomes[i]) * after[i].least;
			}
			return sum;
		}

		boolean isSolved() {
			for (Node node : after) {
				if (!node.solved) {
					return false;
				}
			}
			return true;
		}
	}

	private Found find(Position position, int budget, Supplier<Optional<Position.Step>> otherwise, boolean givesUp) {
		Node root = node(position);
		boolean hopeless = false;
		while (!root.solved && expanded < budget && !hopeless) {
			stopIfAsked();
			hopeless = givesUp && expanded == SOME && root.least < FAR * position.guess();
			Node next = likeliestOpen(root);
			expand(next);
			revise(next);
		}
		Optional<Position.Step> first = root.solved ? Optional.empty() : otherwise.get();
		Plan plan = plan(root, hopeless ? Map.of() : nodes, budget, first);
		if (!root.solved && expanded > 0 && !hopeless) {
			// half a search may lead astray
			Plan simple = plan(root, Map.of(), budget, first);
			plan = simple.expectedCost() < plan.expectedCost() ? simple : plan;
		}
		double cost = plan.expectedCost();
		return new Found(plan, cost, root.solved ? cost : Math.min(cost, root.least), expanded);
	}

	private void stopIfAsked() {
		if (cancelled.getAsBoolean()) {
			throw new CancellationException();
		}
	}

	private Node node(Position position) {
		return nodes.computeIfAbsent(position.key(), key -> new Node(position));
	}

	/** Returns the place that is not yet looked at and to which the best plan so far leads most often. */
	private static Node likeliestOpen(Node root) {
		List<Node> order = new ArrayList<>();
		sort(root, order, new HashSet<>());
		Map<Node, Double> reached = new HashMap<>(Map.of(root, 1.0));
		Node likeliest = null;
		double most = -1;
		for (int i = order.size() - 1; i >= 0; i--) {
			Node node = order.get(i);
			double often = reached.get(node);
			if (node.ways == null) {
				if (often > most) {
					most = often;
					likeliest = node;
				}
				continue;
			}
			for (int way = 0; way < node.best.after().length; way++) {
				reached.merge(node.best.after()[way], often * node.best.step().probability(node.best.outcomes()[way]), Double::sum);
			}
		}
		return likeliest;
	}

	/** Adds what is not solved of the best plan so far, each place behind all to which it leads. */
	private static void sort(Node node, List<Node> order, Set<Node> met) {
		if (!node.solved && met.add(node)) {
			if (node.ways != null) {
				for (Node after : node.best.after()) {
					sort(after, order, met);
				}
			}
			order.add(node);
		}
	}

	private void expand(Node node) {
		expanded++;
		node.ways = new ArrayList<>();
		for (Position.Step step : node.position.steps()) {
			int[] outcomes = possible(step);
			Node[] after = new Node[outcomes.length];
			for (int i = 0; i < outcomes.length; i++) {
				after[i] = node(step.after(outcomes[i]));
				after[i].parents.add(node);
			}
			node.ways.add(new Way(step, outcomes, after));
		}
	}

	private static int[] possible(Position.Step step) {
		return IntStream.range(0, step.outcomes()).filter(outcome -> step.probability(outcome) > 0).toArray();
	}

	/** What is known now of a position is known of those before it. */
	private static void revise(Node from) {
		Deque<Node> changed = new ArrayDeque<>(List.of(from));
		while (!changed.isEmpty()) {
			Node node = changed.removeFirst();
			if (node.ways == null || node.solved) {
				continue;
			}
			Way best = null;
			double least = 0;
			for (Way way : node.ways) {
				double cost = way.least();
				if (best == null || cost < least) {
					best = way;
					least = cost;
				}
			}
			boolean solved = best == null || best.isSolved();
			boolean news = node.best == null || least > node.least || solved;
			node.best = best;
			node.least = solved ? least : Math.max(node.least, least);
			node.solved = solved;
			if (news) {
				changed.addAll(node.parents);
			}
		}
	}

	/** A place of the plan that is written down: what is done there, and where that leads. */
	private static final class Place {
		private final Position position;
		private Position.Step step;
		private int[] outcomes = {};
		private Place[] after = {};
		private boolean looked;
		private double reached;
		private Plan plan;

		Place(Position position) {
			this.position = position;
		}
	}

	/** Writes the best plan down as far as it is known, and goes on with what tells most for its cost, first where one gets most often. */
	private Plan plan(Node root, Map<Object, Node> looked, int budget, Optional<Position.Step> begun) {
		Map<Object, Place> places = new HashMap<>();
		PriorityQueue<Place> open = new PriorityQueue<>(Comparator.comparingDouble((Place place) -> -place.reached));
		Place first = new Place(root.position);
		first.reached = 1;
		places.put(root.position.key(), first);
		open.add(first);
		int more = completed + budget;
		while (!open.isEmpty()) {
			stopIfAsked();
			Place place = open.remove();
			Node known = looked.get(place.position.key());
			boolean chosen = known != null && known.ways != null;
			if (!chosen && more-- <= 0) {
				continue;
			}
			place.looked = true;
			place.step = place == first && begun.isPresent() ? begun.get() : chosen ? known.best == null ? null : known.best.step() : mostTelling(place.position).orElse(null);
			if (place.step != null) {
				place.outcomes = possible(place.step);
				place.after = new Place[place.outcomes.length];
				for (int i = 0; i < place.outcomes.length; i++) {
					Position next = place.step.after(place.outcomes[i]);
					Place met = places.get(next.key());
					place.after[i] = met == null ? new Place(next) : met;
					if (met == null) {
						place.after[i].reached = place.reached * place.step.probability(place.outcomes[i]);
						places.put(next.key(), place.after[i]);
						open.add(place.after[i]);
					}
				}
			}
		}
		return written(first);
	}

	private static Plan written(Place place) {
		if (place.plan == null) {
			List<Plan.Branch> branches = new ArrayList<>();
			for (int i = 0; i < place.after.length; i++) {
				branches.add(new Plan.Branch(place.outcomes[i], place.step.probability(place.outcomes[i]), written(place.after[i])));
			}
			place.plan = !place.looked ? Plan.cut(place.position) : place.step == null ? Plan.end(place.position) : Plan.of(place.position, place.step, branches);
		}
		return place.plan;
	}

	/** Returns the step that lessens the uncertainty most for what it costs; of several the first. Those that cannot do so by their cost alone are not asked. */
	private static Optional<Position.Step> mostTelling(Position position) {
		List<Position.Step> steps = position.steps();
		double before = position.uncertainty();
		double[] limits = new double[steps.size()];
		int likely = 0;
		for (int i = 0; i < limits.length; i++) {
			limits[i] = perCost(steps.get(i), steps.get(i).tellsAtMost(before));
			likely = limits[i] > limits[likely] ? i : likely;
		}
		double reached = limits.length == 0 ? 0 : worth(steps.get(likely), before);
		Position.Step best = null;
		double most = 0;
		for (int i = 0; i < limits.length; i++) {
			// what only rounding tells from nothing is taken too: where there are steps one of them comes next
			if (i == likely || limits[i] >= Math.max(reached, most) * (1 - CLOSE)) {
				double worth = worth(steps.get(i), before);
				if (best == null || worth > most + ROUNDING * Math.abs(most)) {
					best = steps.get(i);
					most = worth;
				}
			}
		}
		return Optional.ofNullable(best);
	}

	/** Returns by how many bits a step lessens the uncertainty for each part of its cost. */
	static double worth(Position.Step step, double before) {
		return perCost(step, before - step.uncertaintyAfter());
	}

	private static double perCost(Position.Step step, double bits) {
		return bits / Math.max(step.cost(), ROUNDING);
	}
}
