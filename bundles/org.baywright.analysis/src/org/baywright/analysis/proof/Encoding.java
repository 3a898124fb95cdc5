package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.Variable;
import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.IndexSet;

/**
 * A program as clauses: every model is a situation that the laws allow, together with exactly what the rules derive
 * from what is known in it.
 */
public final class Encoding {

	public final Program program;
	public final SatSolver solver;
	public final Values values;
	private final int[] verdicts;
	private final int[] bodies;
	private final int[] switches;
	/** For a sign and a verdict a literal for "the verdict stands, and rests on the sign". */
	private final Map<List<Integer>, Integer> resting = new HashMap<>();
	private int allKnown;
	private int ended;

	/**
	 * @param program a stratified program
	 * @param conflictLimit see {@link SatSolver}
	 * @param switchable whether rules can be switched off by {@link #without}
	 */
	public Encoding(Program program, int conflictLimit, boolean switchable) {
		this(program, conflictLimit, switchable, true);
	}

	/** Returns an encoding that no law binds, so that a law can be assumed or not: see {@link #law}. */
	public static Encoding lawless(Program program, int conflictLimit) {
		return new Encoding(program, conflictLimit, false, false);
	}

	private Encoding(Program program, int conflictLimit, boolean switchable, boolean bound) {
		this(program, new SatSolver(conflictLimit), null, switchable, bound);
	}

	/** Returns an encoding of a program of the same variables about the same situations, that no law binds. */
	Encoding beside(Program other) {
		return new Encoding(other, solver, values, false, false);
	}

	private Encoding(Program program, SatSolver solver, Values shared, boolean switchable, boolean bound) {
		this.program = program;
		this.solver = solver;
		values = shared == null ? new Values(program, solver) : shared;
		verdicts = new int[program.verdicts.size()];
		bodies = new int[program.branches.size()];
		switches = new int[program.rules.size()];
		for (int rule = 0; rule < switches.length; rule++) {
			switches[rule] = switchable ? solver.newLiteral() : SatSolver.TRUE;
		}
		for (int law = 0; bound && law < program.lawFormulas.size(); law++) {
			solver.add(law(law));
		}
		for (int[] group : program.strata.groups()) {
			derive(group);
		}
		for (int b = 0; b < bodies.length; b++) {
			bodies[b] = literal(program.branches.get(b).body(), true);
		}
	}

	/** A loop is unrolled: each round can add a verdict, so as many rounds as verdicts reach the least fixpoint. */
	private void derive(int[] group) {
		int rounds = program.strata.isLoop(group) ? group.length : 1;
		for (int verdict : group) {
			verdicts[verdict] = -SatSolver.TRUE;
		}
		for (int round = 0; round < rounds; round++) {
			int[] next = new int[group.length];
			for (int i = 0; i < group.length; i++) {
				List<Integer> ways = new ArrayList<>();
				for (int b : program.derivedBy.get(group[i])) {
					ways.add(Gates.and(solver, List.of(literal(program.branches.get(b).body(), true),
							switches[program.branches.get(b).rule()])));
				}
				next[i] = Gates.or(solver, ways);
			}
			for (int i = 0; i < group.length; i++) {
				verdicts[group[i]] = next[i];
			}
		}
	}

	/** Returns a literal for a formula; with {@code seen} only what is known counts, else the vehicle itself. */
	public int literal(Formula formula, boolean seen) {
		if (formula instanceof Formula.Known lit) {
			if (lit.var() < 0) {
				return -SatSolver.TRUE;
			}
			return seen ? values.knownIn(lit.var(), lit.cells()) : values.in(lit.var(), lit.cells());
		} else if (formula instanceof Formula.Stands stands) {
			return stands.stands() ? verdicts[stands.verdict()] : -verdicts[stands.verdict()];
		} else if (formula instanceof Formula.All all) {
			return Gates.and(solver, all.parts().stream().map(part -> literal(part, seen)).toList());
		}
		return Gates.or(solver, ((Formula.Any) formula).parts().stream().map(part -> literal(part, seen)).toList());
	}

	/** Returns a literal for "the vehicle shows the sign", which it can only if the sign makes sense on it. */
	public int shows(int sign) {
		return Gates.and(solver, List.of(values.in(sign, only(Variable.PRESENT)), literal(program.limitOf.get(sign), false)));
	}

	/** Returns a literal for "the vehicle obeys the law" with this place in {@link Program#lawFormulas}. */
	public int law(int law) {
		return literal(program.lawFormulas.get(law).formula(), false);
	}

	/** Returns a literal for "in one of these ways all literals hold". */
	int anyWay(List<int[]> ways) {
		return Gates.or(solver, ways.stream().map(way -> Gates.and(solver, Arrays.stream(way).boxed().toList())).toList());
	}

	/** Returns whether the condition asks for a sign to be present. */
	public static boolean isSignPresent(Program program, Formula.Known lit) {
		return lit.var() >= 0 && program.variables.get(lit.var()).kind() == Variable.Kind.SIGN
				&& lit.cells().equals(only(Variable.PRESENT));
	}

	/**
	 * Returns a literal for "the sign is present, and a condition on it is part of what makes the branch apply", its own
	 * or one of the branches that derive what it asks for.
	 */
	public int restsOn(int sign, int branch) {
		return restsOn(sign, program.branches.get(branch).body(), new HashSet<>());
	}

	private int restsOn(int sign, Formula formula, Set<Integer> behind) {
		List<Integer> ways = new ArrayList<>();
		if (formula instanceof Formula.Known lit && lit.var() == sign && isSignPresent(program, lit)) {
			return literal(lit, true);
		} else if (formula instanceof Formula.Stands stands && stands.stands() && behind.add(stands.verdict())) {
			boolean loop = program.strata.isLoop(program.strata.groups().get(program.strata.groupOf(stands.verdict())));
			List<Integer> key = List.of(sign, stands.verdict());
			Integer known = loop ? null : resting.get(key);
			if (known == null) {
				for (int b : program.derivedBy.get(stands.verdict())) {
					ways.add(Gates.and(solver, List.of(bodies[b], restsOn(sign, program.branches.get(b).body(), behind))));
				}
				known = Gates.or(solver, ways);
				resting.put(key, known);
			}
			behind.remove(stands.verdict());
			return known;
		} else if (formula instanceof Formula.All all) {
			all.parts().forEach(part -> ways.add(restsOn(sign, part, behind)));
		} else if (formula instanceof Formula.Any any) {
			any.parts().forEach(
					part -> ways.add(Gates.and(solver, List.of(literal(part, true), restsOn(sign, part, behind)))));
		}
		return Gates.or(solver, ways);
	}

	public int verdict(int verdict) {
		return verdicts[verdict];
	}

	/** Returns a literal for "all that the branch needs holds", whether or not its rule is switched off. */
	public int body(int branch) {
		return bodies[branch];
	}

	/** Returns a literal that demands that every finding is known. */
	public int allKnown() {
		if (allKnown == 0) {
			allKnown = solver.newLiteral();
			for (int var = 0; var < program.variables.size(); var++) {
				solver.add(-allKnown, values.known(var));
			}
		}
		return allKnown;
	}

	/** Returns a literal for "somebody confirms or refers": here, or certainly in another part of the family. */
	public int ended() {
		if (ended == 0) {
			List<Integer> ways = new ArrayList<>();
			for (int verdict = 0; verdict < verdicts.length; verdict++) {
				if (program.verdicts.get(verdict).isEnd()) {
					ways.add(verdicts[verdict]);
				}
			}
			program.unquiet.forEach(formula -> ways.add(literal(formula, false)));
			ended = Gates.or(solver, ways);
		}
		return ended;
	}

	/** Asks with all rules switched on. */
	public Answer ask(int... assumptions) {
		return solver.solve(assumptions);
	}

	/** Asks a switchable encoding with one rule switched off. */
	public Answer askWithout(int rule, int... assumptions) {
		int[] all = Arrays.copyOf(assumptions, assumptions.length + switches.length);
		for (int r = 0; r < switches.length; r++) {
			all[assumptions.length + r] = r == rule ? -switches[r] : switches[r];
		}
		return solver.solve(all);
	}

	/**
	 * Returns the smallest set of rules with which, the given rule switched off, none of the ways is open: in none of
	 * them all literals can hold together. Empty if one is, or a limit was reached.
	 */
	public Optional<List<Integer>> rulesBehind(int without, List<int[]> ways) {
		List<Integer> hard = new ArrayList<>(List.of(anyWay(ways), -switches[without]));
		List<Integer> soft = new ArrayList<>();
		for (int r = 0; r < switches.length; r++) {
			if (r != without) {
				soft.add(switches[r]);
			}
		}
		return Minimal.conflict(solver, hard, soft).map(core -> {
			List<Integer> rules = new ArrayList<>();
			for (int r = 0; r < switches.length; r++) {
				if (core.contains(switches[r])) {
					rules.add(r);
				}
			}
			return rules;
		});
	}

	/** Returns what is known in the last model: the cell of each variable or {@link Program#OPEN}. */
	public int[] knownCells() {
		int[] cells = new int[program.variables.size()];
		for (int var = 0; var < cells.length; var++) {
			cells[var] = solver.holds(values.known(var)) ? values.cell(var) : Program.OPEN;
		}
		return cells;
	}

	public static IndexSet only(int cell) {
		return IndexSet.range(cell, cell);
	}
}
