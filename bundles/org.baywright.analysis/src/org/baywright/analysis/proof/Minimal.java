package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;

/**
 * Minimal reasons, by QuickXplain (Junker, AAAI 2004). The result depends on the order of the literals alone: of two
 * reasons the one with earlier literals is preferred.
 */
public final class Minimal {

	private final SatSolver solver;
	private boolean undecided;

	private Minimal(SatSolver solver) {
		this.solver = solver;
	}

	/**
	 * Returns a smallest-by-inclusion part of {@code soft} that cannot hold together with {@code hard}; empty if all of
	 * it can hold, or if a limit was reached.
	 */
	public static Optional<List<Integer>> conflict(SatSolver solver, List<Integer> hard, List<Integer> soft) {
		Minimal search = new Minimal(solver);
		if (!search.clash(hard, soft)) {
			return Optional.empty();
		}
		List<Integer> found = search.clash(hard, List.of()) ? List.of() : search.explain(hard, false, soft);
		return search.undecided ? Optional.empty() : Optional.of(found);
	}

	private boolean clash(List<Integer> hard, List<Integer> soft) {
		int[] all = new int[hard.size() + soft.size()];
		int n = 0;
		for (int literal : hard) {
			all[n++] = literal;
		}
		for (int literal : soft) {
			all[n++] = literal;
		}
		Answer answer = solver.solve(all);
		undecided |= answer == Answer.UNDECIDED;
		return answer == Answer.NO;
	}

	private List<Integer> explain(List<Integer> background, boolean grown, List<Integer> soft) {
		if (grown && clash(background, List.of())) {
			return List.of();
		}
		if (soft.size() == 1) {
			return soft;
		}
		int half = soft.size() / 2;
		List<Integer> first = soft.subList(0, half);
		List<Integer> second = soft.subList(half, soft.size());
		List<Integer> fromSecond = explain(join(background, first), !first.isEmpty(), second);
		List<Integer> fromFirst = explain(join(background, fromSecond), !fromSecond.isEmpty(), first);
		return join(fromFirst, fromSecond);
	}

	private static List<Integer> join(List<Integer> a, List<Integer> b) {
		List<Integer> all = new ArrayList<>(a);
		all.addAll(b);
		return all;
	}
}
