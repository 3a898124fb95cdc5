package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import org.baywright.analysis.Situation;

/** Finds the rules between what is known in a situation and a rule that fires in it. */
public final class Chain {

	private static final int NONE = -1;

	private final Program program;
	private final int[] known;
	private final boolean[] stands;
	/** For each verdict that stands the branch that derived it first. */
	private final int[] derivedBy;
	/** For each verdict that stands how many were derived before it. */
	private final int[] turn;
	private int turns;

	private Chain(Program program, Situation situation) {
		this.program = program;
		known = new int[program.variables.size()];
		Arrays.fill(known, Program.OPEN);
		situation.facts().forEach(fact -> {
			int var = program.numberOf(fact.variable());
			known[var] = program.cells.get(var).of(fact.example());
		});
		stands = new boolean[program.verdicts.size()];
		derivedBy = new int[stands.length];
		turn = new int[stands.length];
		program.strata.groups().forEach(this::derive);
	}

	/** Returns the branches whose verdicts the branch rests on in the situation, from the first of the chain to the last. */
	public static List<Integer> behind(Program program, Situation situation, int branch) {
		Chain chain = new Chain(program, situation);
		Set<Integer> behind = new LinkedHashSet<>();
		chain.collect(program.branches.get(branch).body(), chain.turns, behind);
		return List.copyOf(behind);
	}

	/** As in {@link Program#derive}, with who derives what and when. */
	private void derive(int[] group) {
		boolean changed = true;
		while (changed) {
			changed = false;
			for (int verdict : group) {
				if (!stands[verdict]) {
					derivedBy[verdict] = program.derivedBy.get(verdict).stream()
							.filter(b -> Program.holds(program.branches.get(b).body(), known, stands)).findFirst().orElse(NONE);
					if (derivedBy[verdict] != NONE) {
						stands[verdict] = true;
						turn[verdict] = turns++;
						changed = true;
					}
				}
			}
		}
	}

	/** Collects what makes the formula hold, of verdicts only those derived before the turn: so nothing rests on itself. */
	private void collect(Formula formula, int before, Set<Integer> into) {
		if (formula instanceof Formula.All all) {
			all.parts().forEach(part -> collect(part, before, into));
		} else if (formula instanceof Formula.Any any) {
			List<Formula> holding = any.parts().stream().filter(part -> holds(part, before)).toList();
			// what is seen needs no rule
			holding.stream().filter(part -> holds(part, 0)).findFirst().or(() -> holding.stream().findFirst())
					.ifPresent(part -> collect(part, before, into));
		} else if (formula instanceof Formula.Stands asked && asked.stands() && stands[asked.verdict()]) {
			int branch = derivedBy[asked.verdict()];
			if (!into.contains(branch)) {
				collect(program.branches.get(branch).body(), turn[asked.verdict()], into);
				into.add(branch);
			}
		}
	}

	private boolean holds(Formula formula, int before) {
		if (formula instanceof Formula.Stands asked) {
			return asked.stands() ? stands[asked.verdict()] && turn[asked.verdict()] < before : !stands[asked.verdict()];
		} else if (formula instanceof Formula.All all) {
			return all.parts().stream().allMatch(part -> holds(part, before));
		} else if (formula instanceof Formula.Any any) {
			return any.parts().stream().anyMatch(part -> holds(part, before));
		}
		return Program.holds(formula, known, stands);
	}
}
