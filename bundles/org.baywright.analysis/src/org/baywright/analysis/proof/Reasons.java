package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.analysis.sat.SatSolver;

/**
 * Finds the smallest set of source lines that keep something from ever happening. Each line can be switched off: a
 * condition then demands nothing, a law holds no more, an outcome no longer says anything. So that every switch only
 * ever takes away, each verdict stands twice: as something that must be supported, and as something that is forced.
 */
public final class Reasons {

	private final Program program;
	private final SatSolver solver;
	private final Values values;
	private final Map<Integer, Integer> switches = new TreeMap<>();
	private final int[] supported;
	private final int[] forced;

	public Reasons(Program program, int conflictLimit) {
		this.program = program;
		solver = new SatSolver(conflictLimit);
		values = new Values(program, solver);
		supported = new int[program.verdicts.size()];
		forced = new int[program.verdicts.size()];
		for (Program.LawFormula law : program.lawFormulas) {
			// a law is one statement, so that one switch turns all of it off
			solver.add(-switchOf(law.line()), vehicle(law.formula()));
		}
		program.strata.groups().forEach(this::derive);
	}

	private int switchOf(int line) {
		return switches.computeIfAbsent(line, key -> solver.newLiteral());
	}

	private int vehicle(Formula formula) {
		if (formula instanceof Formula.Known lit) {
			return lit.var() < 0 ? -SatSolver.TRUE : values.in(lit.var(), lit.cells());
		} else if (formula instanceof Formula.All all) {
			return Gates.and(solver, all.parts().stream().map(this::vehicle).toList());
		}
		return Gates.or(solver, ((Formula.Any) formula).parts().stream().map(this::vehicle).toList());
	}

	private void derive(int[] group) {
		for (int verdict : group) {
			supported[verdict] = -SatSolver.TRUE;
			forced[verdict] = solver.newLiteral();
		}
		int rounds = program.strata.isLoop(group) ? group.length : 1;
		for (int round = 0; round < rounds; round++) {
			int[] next = new int[group.length];
			for (int i = 0; i < group.length; i++) {
				next[i] = someBranch(program.derivedBy.get(group[i]));
			}
			for (int i = 0; i < group.length; i++) {
				supported[group[i]] = next[i];
			}
		}
		for (int verdict : group) {
			for (int b : program.derivedBy.get(verdict)) {
				Branch branch = program.branches.get(b);
				solver.add(-switchOf(branch.line()), -holds(branch.body()), forced[verdict]);
			}
		}
	}

	/** Returns a literal that needs one of the branches to fire. */
	private int someBranch(List<Integer> branches) {
		if (branches.isEmpty()) {
			return -SatSolver.TRUE;
		}
		int any = solver.newLiteral();
		int[] clause = new int[branches.size() + 1];
		clause[0] = -any;
		for (int i = 0; i < branches.size(); i++) {
			clause[i + 1] = solver.newLiteral();
			demand(clause[i + 1], program.branches.get(branches.get(i)).body());
		}
		solver.add(clause);
		return any;
	}

	/** Makes {@code when} need the formula, as far as its lines are switched on. */
	private void demand(int when, Formula formula) {
		if (formula instanceof Formula.Known lit) {
			solver.add(-when, -switchOf(lit.line()), values.knownIn(lit.var(), lit.cells()));
		} else if (formula instanceof Formula.Stands stands) {
			solver.add(-when, -switchOf(stands.line()),
					stands.stands() ? supported[stands.verdict()] : -forced[stands.verdict()]);
		} else if (formula instanceof Formula.All all) {
			all.parts().forEach(part -> demand(when, part));
		} else {
			List<Formula> parts = ((Formula.Any) formula).parts();
			int[] clause = new int[parts.size() + 1];
			clause[0] = -when;
			for (int i = 0; i < parts.size(); i++) {
				clause[i + 1] = solver.newLiteral();
				demand(clause[i + 1], parts.get(i));
			}
			solver.add(clause);
		}
	}

	/** Returns a literal that holds whenever the formula must hold. */
	private int holds(Formula formula) {
		if (formula instanceof Formula.Known lit) {
			return values.knownIn(lit.var(), lit.cells());
		} else if (formula instanceof Formula.Stands stands) {
			return stands.stands() ? forced[stands.verdict()] : -supported[stands.verdict()];
		} else if (formula instanceof Formula.All all) {
			return Gates.and(solver, all.parts().stream().map(this::holds).toList());
		}
		return Gates.or(solver, ((Formula.Any) formula).parts().stream().map(this::holds).toList());
	}

	/**
	 * Returns the smallest set of lines for which none of the branches can ever fire, own lines of the branches
	 * preferred; empty if one can fire or a limit was reached.
	 */
	public Optional<List<SourceLine>> whyNever(List<Integer> branches) {
		int goal = someBranch(branches);
		String own = program.rules.get(program.branches.get(branches.get(0)).rule()).name();
		List<Integer> order = new ArrayList<>(switches.keySet());
		order.sort((a, b) -> compare(a, b, own));
		Optional<List<Integer>> core = Minimal.conflict(solver, List.of(goal),
				order.stream().map(switches::get).toList());
		return core.map(literals -> order.stream().filter(line -> literals.contains(switches.get(line)))
				.map(program.lines::get).toList());
	}

	/** Returns the smallest set of laws that no vehicle can obey together; empty if one can. */
	public Optional<List<SourceLine>> whyNoVehicle() {
		List<Integer> order = new ArrayList<>(switches.keySet());
		order.sort((a, b) -> compare(a, b, ""));
		return Minimal.conflict(solver, List.of(), order.stream().map(switches::get).toList())
				.map(literals -> order.stream().filter(line -> literals.contains(switches.get(line)))
						.map(program.lines::get).toList());
	}

	private int compare(int a, int b, String own) {
		SourceLine left = program.lines.get(a);
		SourceLine right = program.lines.get(b);
		boolean leftOwn = left.kind().equals("rule") && left.element().equals(own);
		boolean rightOwn = right.kind().equals("rule") && right.element().equals(own);
		if (leftOwn != rightOwn) {
			return leftOwn ? -1 : 1;
		}
		return left.compareTo(right);
	}
}
