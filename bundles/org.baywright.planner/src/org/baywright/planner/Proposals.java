package org.baywright.planner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * What to do next: some steps with what is to be expected to the end if one begins with them. While the search fits its budget
 * the first is the best there is. Beyond it the steps that tell most for their cost are each followed by a plan that goes on in
 * that way, and compared (a rollout; Bertsekas, Tsitsiklis and Wu 1997).
 *
 * @param steps the best first
 * @param isBest whether no order of steps is better than to begin with the first
 * @param least what no order of steps can do better than
 */
public record Proposals(List<Proposal> steps, boolean isBest, double least) {

	/** How many steps are compared. */
	private static final int COMPARED = 5;
	/** Up to how many steps to choose from an exact search is worth a try where the answer is to come at once. */
	private static final int SMALL = 8;
	/** Up to how many it is worth a longer try, and how long a one. */
	private static final int FEW = 4;
	private static final int FEW_BUDGET = 150;
	/** By what share steps may differ in what is to be expected and still count as alike, where no search has proved it. */
	private static final double ALIKE = 0.02;
	/** Up to how many positions are looked at closely for a whole plan. */
	private static final int MOST_WHOLE = 350;
	/** How many are where there is one step to choose: with more, looking at each takes longer, and more of it. */
	private static final int WHOLE = 14_000;
	/** Up to how many more are looked at to complete a whole plan, and how many where there is one step to choose. */
	private static final int MOST_COMPLETED = 850;
	private static final int COMPLETED = 30_000;
	/** Up to how many steps to choose from all of it is looked at: with more, less of it, so that the answer comes alike soon. */
	private static final int MANY = 50;
	private static final int LEAST_COMPLETED = 20;
	/** How many steps are told. */
	private static final int TOLD = 4;

	/** How much is looked at: the more, the better and the slower. */
	public enum Care {
		/** For an answer at once. */
		QUICK(30, 150),
		/** For somebody who can wait a moment. */
		THOROUGH(400, 1500);

		private final int budget;
		private final int completed;

		Care(int budget, int completed) {
			this.budget = budget;
			this.completed = completed;
		}
	}

	/**
	 * A step with what follows.
	 *
	 * @param step what to do
	 * @param plan what to do after each outcome that is possible, in their order
	 * @param expectedCost what is to be expected to the end, in the project's own money, the step too
	 * @param expectedMinutes the work in it, in minutes
	 * @param expectedWaiting how long the vehicle only waits, in minutes
	 */
	public record Proposal(Position.Step step, List<Plan.Branch> plan, double expectedCost, double expectedMinutes, double expectedWaiting) {

		static Proposal of(Position position, double rate, Position.Step step, List<Plan.Branch> branches) {
			Plan whole = Plan.of(position, step, branches);
			return new Proposal(step, whole.branches(), whole.expectedCost(), whole.expected(Position.Step::minutes, 1 / rate), whole.expected(Position.Step::waiting, 0));
		}
	}

	public Proposals {
		steps = List.copyOf(steps);
	}

	/**
	 * Works them out.
	 *
	 * @param rate what a minute of work costs, above 0
	 * @param cancelled asked now and then whether to stop
	 * @return no steps at an end
	 * @throws CancellationException if it was stopped
	 */
	public static Proposals at(Position position, double rate, Care care, BooleanSupplier cancelled) {
		List<Position.Step> steps = position.steps();
		if (steps.isEmpty()) {
			return new Proposals(List.of(), true, 0);
		}
		int budget = care == Care.QUICK && steps.size() > SMALL ? 0 : Math.max(care.budget, steps.size() <= FEW ? FEW_BUDGET : 0);
		int completed = steps.size() <= MANY ? care.completed : Math.max(LEAST_COMPLETED, care.completed * MANY / steps.size());
		Search.Found found = Search.from(position, budget, completed, cancelled);
		double before = position.uncertainty();
		Map<String, Position.Step> candidates = new LinkedHashMap<>();
		found.plan().step().ifPresent(step -> candidates.put(step.doing(), step));
		steps.stream().map(step -> Map.entry(step, -Search.worth(step, before))).sorted(Map.Entry.comparingByValue()).map(Map.Entry::getKey).forEach(step -> candidates.putIfAbsent(step.doing(), step));
		// what the best was proved with is enough to prove the others dearer
		int others = found.isBest() ? Math.max(care.budget, found.positions()) : 0;
		List<Proposal> proposals = new ArrayList<>();
		for (Position.Step step : candidates.values().stream().limit(COMPARED).toList()) {
			boolean first = found.isBest() && proposals.isEmpty();
			proposals.add(Proposal.of(position, rate, step, first ? found.plan().branches() : followed(step, others, completed, cancelled)));
		}
		if (!found.isBest()) {
			proposals.sort(Comparator.comparingDouble(Proposal::expectedCost));
			cheapFirst(proposals, before);
		} else {
			proposals.subList(1, proposals.size()).sort(Comparator.comparingDouble(Proposal::expectedCost));
		}
		return new Proposals(proposals.stream().limit(TOLD).toList(), found.isBest(), found.least());
	}

	/**
	 * Returns a whole plan: the best there is if a search of some size finds it, or else one that begins with what is proposed for
	 * an answer at once.
	 *
	 * @param rate what a minute of work costs, above 0
	 * @param cancelled asked now and then whether to stop
	 * @throws CancellationException if it was stopped
	 */
	public static Search.Found whole(Position position, double rate, BooleanSupplier cancelled) {
		Position first = position;
		// what follows from what is known is nothing to choose
		while (first.steps().size() == 1 && first.steps().get(0).outcomes() == 1 && first.steps().get(0).cost() == 0) {
			first = first.steps().get(0).after(0);
		}
		int steps = Math.max(1, first.steps().size());
		return Search.beginning(position, Math.min(MOST_WHOLE, WHOLE / (steps * steps)), Math.min(MOST_COMPLETED, COMPLETED / steps),
				() -> at(position, rate, Care.QUICK, cancelled).steps().stream().map(Proposal::step).findFirst(), cancelled);
	}

	/**
	 * Of steps that are nearly alike by what is to be expected the cheapest comes first, of these what tells most: the estimate tells
	 * them no further apart.
	 *
	 * @param before how much is not known of the cause, in bits
	 */
	private static void cheapFirst(List<Proposal> proposals, double before) {
		double limit = proposals.get(0).expectedCost() * (1 + ALIKE);
		Proposal cheapest = proposals.stream().filter(proposal -> proposal.expectedCost() <= limit && !proposal.step().isDisturbing()).min(Comparator.comparingDouble((Proposal proposal) -> proposal.step().cost()).thenComparing(proposal -> -Search.worth(proposal.step(), before))).orElse(proposals.get(0));
		proposals.remove(cheapest);
		proposals.add(0, cheapest);
	}

	private static List<Plan.Branch> followed(Position.Step step, int budget, int completed, BooleanSupplier cancelled) {
		List<Plan.Branch> branches = new ArrayList<>();
		for (int outcome = 0; outcome < step.outcomes(); outcome++) {
			double probability = step.probability(outcome);
			if (probability > 0) {
				int share = (int) Math.ceil(completed * probability);
				branches.add(new Plan.Branch(outcome, probability, Search.from(step.after(outcome), budget, share, cancelled).plan()));
			}
		}
		return branches;
	}
}
