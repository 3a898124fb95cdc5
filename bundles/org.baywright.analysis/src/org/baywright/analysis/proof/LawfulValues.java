package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

import org.baywright.analysis.Variable;
import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;

/** Which values of a finding some vehicle can have, by the laws alone. Quicker than {@link Encoding}, as no rule is asked. */
final class LawfulValues {

	private final Program program;
	private final SatSolver solver;
	private final Values values;
	/** For each variable those that laws tie to it, ascending; none of what no law speaks of. */
	private final List<int[]> tied = new ArrayList<>();
	private final Map<List<Integer>, Boolean> known = new HashMap<>();

	LawfulValues(Program program, int conflictLimit) {
		this.program = program;
		solver = new SatSolver(conflictLimit);
		values = new Values(program, solver);
		int count = program.variables.size();
		int[] parents = IntStream.range(0, count).toArray();
		BitSet bound = new BitSet();
		for (Program.LawFormula law : program.lawFormulas) {
			solver.add(literal(law.formula()));
			tie(law.formula(), -1, parents, bound);
		}
		for (int var = 0; var < count; var++) {
			tie(program.limitOf.get(var), var, parents, bound);
			if (program.moduleOf[var] >= 0) {
				// a silent module is silent for all of its codes
				unite(parents, var, program.moduleOf[var]);
			}
		}
		Map<Integer, List<Integer>> groups = new HashMap<>();
		BitSet boundGroups = new BitSet();
		for (int var = 0; var < count; var++) {
			groups.computeIfAbsent(find(parents, var), key -> new ArrayList<>()).add(var);
			if (bound.get(var)) {
				boundGroups.set(find(parents, var));
			}
		}
		for (int var = 0; var < count; var++) {
			int group = find(parents, var);
			tied.add(boundGroups.get(group) ? groups.get(group).stream().mapToInt(each -> each).toArray() : new int[0]);
		}
	}

	private static void tie(Formula formula, int to, int[] parents, BitSet bound) {
		int[] first = { to };
		formula.eachLeaf(leaf -> {
			if (leaf instanceof Formula.Known lit && lit.var() >= 0) {
				bound.set(lit.var());
				first[0] = first[0] < 0 ? lit.var() : first[0];
				unite(parents, first[0], lit.var());
			}
		});
	}

	private static int find(int[] parents, int var) {
		int root = var;
		while (parents[root] != root) {
			root = parents[root];
		}
		parents[var] = root;
		return root;
	}

	private static void unite(int[] parents, int one, int other) {
		parents[find(parents, one)] = find(parents, other);
	}

	private int literal(Formula formula) {
		if (formula instanceof Formula.Known lit) {
			return lit.var() < 0 ? -SatSolver.TRUE : values.in(lit.var(), lit.cells());
		} else if (formula instanceof Formula.All all) {
			return Gates.and(solver, all.parts().stream().map(this::literal).toList());
		}
		return Gates.or(solver, ((Formula.Any) formula).parts().stream().map(this::literal).toList());
	}

	/** Returns whether laws tie a variable to others, so that what is found of these limits it. */
	boolean isTied(int var) {
		return tied.get(var).length > 0;
	}

	/**
	 * Returns the cells of a variable that some vehicle has; also those of which that could not be decided.
	 *
	 * @param cells cell of each variable, or {@link Program#OPEN}
	 */
	List<Integer> possible(int[] cells, int var) {
		int module = program.moduleOf[var];
		List<Integer> possible = new ArrayList<>();
		for (int cell = 0; cell < program.cells.get(var).count(); cell++) {
			boolean onlyReading = program.hasStates(var) && cell == Variable.PRESENT;
			boolean otherwiseAsked = module >= 0 && cells[module] != Program.OPEN && (cells[module] == Variable.SILENT) != (cell == Variable.UNREAD);
			if (!onlyReading && !otherwiseAsked && (!isTied(var) || has(cells, var, cell))) {
				possible.add(cell);
			}
		}
		return possible;
	}

	/** What is found of other variables than those that are tied to it makes no difference; what is found makes sense on the vehicle. */
	private boolean has(int[] cells, int var, int cell) {
		List<Integer> key = new ArrayList<>(List.of(var, cell));
		List<Integer> assumptions = new ArrayList<>(List.of(values.in(var, Encoding.only(cell)), literal(program.limitOf.get(var))));
		for (int other : tied.get(var)) {
			key.add(cells[other]);
			if (cells[other] != Program.OPEN) {
				assumptions.add(values.in(other, program.meant(other, cells[other])));
				assumptions.add(literal(program.limitOf.get(other)));
			}
		}
		return known.computeIfAbsent(key, asked -> solver.solve(assumptions.stream().mapToInt(literal -> literal).toArray()) != Answer.NO);
	}

	/**
	 * Returns whether it is sure that some vehicle has all of this, and all of it makes sense on it.
	 *
	 * @param known cells of which some vehicle is known to have all
	 */
	boolean have(int[] cells, int[] known) {
		List<Integer> assumptions = new ArrayList<>();
		boolean changed = false;
		for (int var = 0; var < cells.length; var++) {
			int module = program.moduleOf[var];
			if (module >= 0 && cells[var] != Program.OPEN && (cells[var] == Variable.UNREAD) != (cells[module] == Variable.SILENT)) {
				return false;
			}
			// what no law speaks of can always be
			if (isTied(var) && cells[var] != Program.OPEN) {
				changed |= cells[var] != known[var];
				assumptions.add(values.in(var, program.meant(var, cells[var])));
				assumptions.add(literal(program.limitOf.get(var)));
			}
		}
		return !changed || solver.solve(assumptions.stream().mapToInt(literal -> literal).toArray()) == Answer.YES;
	}
}
