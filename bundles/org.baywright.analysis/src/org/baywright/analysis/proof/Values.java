package org.baywright.analysis.proof;

import org.baywright.analysis.Variable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;

/**
 * The variables of a program as literals: what the vehicle is like, and what of it is known. The two are kept apart so
 * that a law can rule out a situation through something nobody has looked at yet.
 */
public final class Values {

	private final SatSolver solver;
	private final Program program;
	private final int[] known;
	private final int[][] literals;
	private final boolean[] ordered;
	private final List<Map<IndexSet, Integer>> sets = new ArrayList<>();
	private final List<Map<IndexSet, Integer>> knownSets = new ArrayList<>();

	public Values(Program program, SatSolver solver) {
		this.program = program;
		this.solver = solver;
		int count = program.variables.size();
		known = new int[count];
		literals = new int[count][];
		ordered = new boolean[count];
		for (int var = 0; var < count; var++) {
			known[var] = program.isTrait(var) ? SatSolver.TRUE : solver.newLiteral();
			sets.add(new HashMap<>());
			knownSets.add(new HashMap<>());
			declare(var);
		}
		for (int var = 0; var < count; var++) {
			if (program.moduleOf[var] >= 0) {
				linkCode(var, program.moduleOf[var]);
			}
		}
	}

	private void declare(int var) {
		int cells = program.cells.get(var).count();
		ordered[var] = cells > 2 && program.domains.get(var).filter(Domain.Quantity.class::isInstance).isPresent();
		literals[var] = new int[cells == 1 ? 0 : cells == 2 || ordered[var] ? cells - 1 : cells];
		for (int i = 0; i < literals[var].length; i++) {
			literals[var][i] = solver.newLiteral();
			if (ordered[var] && i > 0) {
				solver.add(-literals[var][i - 1], literals[var][i]);
			}
		}
		if (cells > 2 && !ordered[var]) {
			solver.add(literals[var]);
			for (int i = 0; i < cells; i++) {
				for (int j = i + 1; j < cells; j++) {
					solver.add(-literals[var][i], -literals[var][j]);
				}
			}
		}
	}

	/** A code is unread exactly when its module is silent, and who knows the code has asked the module. */
	private void linkCode(int code, int module) {
		int unread = in(code, IndexSet.range(Variable.UNREAD, Variable.UNREAD));
		int silent = in(module, IndexSet.range(Variable.SILENT, Variable.SILENT));
		solver.add(-unread, silent);
		solver.add(unread, -silent);
		solver.add(-known[code], known[module]);
		solver.add(-known[module], -silent, known[code]);
		if (program.hasStates(code)) {
			solver.add(-in(code, IndexSet.range(Variable.PRESENT, Variable.PRESENT))); // only a reading, see Variable
		}
	}

	/** Returns the literal for "somebody knows the variable". */
	public int known(int var) {
		return known[var];
	}

	/** Returns a literal for "the vehicle's value lies in one of the cells". */
	public int in(int var, IndexSet cells) {
		return sets.get(var).computeIfAbsent(cells, key -> makeIn(var, key));
	}

	private int makeIn(int var, IndexSet cells) {
		int count = program.cells.get(var).count();
		if (cells.isEmpty()) {
			return -SatSolver.TRUE;
		} else if (cells.complement(count).isEmpty()) {
			return SatSolver.TRUE;
		} else if (count == 2) {
			return cells.contains(0) ? literals[var][0] : -literals[var][0];
		}
		List<Integer> parts = new ArrayList<>();
		for (int run = 0; run < cells.runCount(); run++) {
			if (ordered[var]) {
				parts.add(Gates.and(solver, List.of(atLeast(var, cells.low(run)), atMost(var, cells.high(run)))));
			} else {
				for (int cell = cells.low(run); cell <= cells.high(run); cell++) {
					parts.add(literals[var][cell]);
				}
			}
		}
		return Gates.or(solver, parts);
	}

	private int atMost(int var, int cell) {
		return cell >= literals[var].length ? SatSolver.TRUE : literals[var][cell];
	}

	private int atLeast(int var, int cell) {
		return cell == 0 ? SatSolver.TRUE : -literals[var][cell - 1];
	}

	/** Returns a literal for "the variable is known and its value lies in one of the cells". */
	public int knownIn(int var, IndexSet cells) {
		if (var < 0) {
			return -SatSolver.TRUE;
		}
		return knownSets.get(var).computeIfAbsent(cells,
				key -> Gates.and(solver, List.of(known[var], in(var, key))));
	}

	/** Returns the cell of the variable in the solver's last model. */
	public int cell(int var) {
		for (int i = 0; i < literals[var].length; i++) {
			if (solver.holds(literals[var][i])) {
				return i;
			}
		}
		return literals[var].length; // the last cell of a pair or of an order
	}

	/**
	 * Returns literals whose conjunction says that the value is in the cell, each of which only shuts out other cells;
	 * leaving some of them away widens the set. For an order the weakest stand last on each side.
	 */
	public List<Integer> exclusions(int var, int cell) {
		List<Integer> out = new ArrayList<>();
		int count = program.cells.get(var).count();
		if (count == 2) {
			out.add(cell == 0 ? literals[var][0] : -literals[var][0]);
		} else if (ordered[var]) {
			for (int i = cell; i < count - 1; i++) {
				out.add(atMost(var, i));
			}
			for (int i = cell; i > 0; i--) {
				out.add(atLeast(var, i));
			}
		} else {
			for (int i = 0; i < count && count > 1; i++) {
				if (i != cell) {
					out.add(-literals[var][i]);
				}
			}
		}
		return out;
	}

	/** Returns the cells that a literal of {@link #exclusions} leaves. */
	public IndexSet leaves(int var, int literal) {
		int count = program.cells.get(var).count();
		for (int i = 0; i < literals[var].length; i++) {
			if (Math.abs(literal) == literals[var][i]) {
				if (count == 2) {
					return IndexSet.range(literal > 0 ? 0 : 1, literal > 0 ? 0 : 1);
				} else if (ordered[var]) {
					return literal > 0 ? IndexSet.range(0, i) : IndexSet.range(i + 1, count - 1);
				}
				return IndexSet.range(i, i).complement(count);
			}
		}
		throw new IllegalArgumentException("not a literal of this variable");
	}
}
