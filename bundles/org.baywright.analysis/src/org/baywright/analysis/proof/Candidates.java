package org.baywright.analysis.proof;

import org.baywright.analysis.Variable;
import java.util.Arrays;
import java.util.Optional;

import org.baywright.model.IndexSet;

/**
 * Builds a situation in which a branch should fire by walking back along its chain. It is a guess that the derivation
 * then confirms or not; most live branches are shown live this way, without a solver.
 */
final class Candidates {

	/** A guess that takes longer than this is left to the solver. */
	private static final int MOST_STEPS = 500;

	private final Program program;
	private int steps;

	Candidates(Program program) {
		this.program = program;
	}

	/** Returns known cells that satisfy what the branch asks to be present; verdicts that must not stand are ignored. */
	Optional<int[]> of(int branch) {
		return of(branch, new IndexSet[program.variables.size()]);
	}

	/**
	 * Returns known cells that satisfy what the branch asks to be present; verdicts that must not stand are ignored.
	 *
	 * @param known cell of each variable, or {@link Program#OPEN}
	 */
	Optional<int[]> of(int branch, int[] known) {
		IndexSet[] allowed = new IndexSet[known.length];
		for (int var = 0; var < known.length; var++) {
			allowed[var] = known[var] == Program.OPEN ? null : program.meant(var, known[var]);
		}
		return of(branch, allowed);
	}

	private Optional<int[]> of(int branch, IndexSet[] allowed) {
		steps = 0;
		return satisfy(program.branches.get(branch).body(), allowed).map(this::pick);
	}

	private Optional<IndexSet[]> satisfy(Formula formula, IndexSet[] allowed) {
		if (steps++ > MOST_STEPS) {
			return Optional.empty();
		}
		if (formula instanceof Formula.Known lit) {
			return lit.var() < 0 ? Optional.empty() : narrow(allowed, lit.var(), lit.cells());
		} else if (formula instanceof Formula.All all) {
			Optional<IndexSet[]> state = Optional.of(allowed);
			for (Formula part : all.parts()) {
				if (state.isEmpty()) {
					return state;
				}
				state = satisfy(part, state.get());
			}
			return state;
		} else if (formula instanceof Formula.Any any) {
			for (Formula part : any.parts()) {
				Optional<IndexSet[]> state = satisfy(part, allowed);
				if (state.isPresent()) {
					return state;
				}
			}
			return Optional.empty();
		}
		Formula.Stands stands = (Formula.Stands) formula;
		if (!stands.stands()) {
			return Optional.of(allowed);
		}
		for (int b : program.derivedBy.get(stands.verdict())) {
			Optional<IndexSet[]> state = satisfy(program.branches.get(b).body(), allowed);
			if (state.isPresent()) {
				return state;
			}
		}
		return Optional.empty();
	}

	private Optional<IndexSet[]> narrow(IndexSet[] allowed, int var, IndexSet cells) {
		IndexSet met = allowed[var] == null ? cells : allowed[var].intersect(cells);
		if (met.isEmpty()) {
			return Optional.empty();
		}
		IndexSet[] next = Arrays.copyOf(allowed, allowed.length);
		next[var] = met;
		int module = program.moduleOf[var];
		if (module >= 0) {
			boolean silent = met.equals(Encoding.only(Variable.UNREAD));
			return narrow(next, module, Encoding.only(silent ? Variable.SILENT : Variable.ANSWERS));
		}
		return Optional.of(next);
	}

	/** Returns the first cell in which a vehicle can be. */
	private int first(int var, IndexSet cells) {
		IndexSet of = program.hasStates(var) ? cells.intersect(Encoding.only(Variable.PRESENT).complement(program.cells.get(var).count())) : cells;
		return of.first();
	}

	private int[] pick(IndexSet[] allowed) {
		int[] cells = new int[allowed.length];
		for (int var = 0; var < cells.length; var++) {
			cells[var] = allowed[var] != null ? first(var, allowed[var]) : program.isTrait(var) ? 0 : Program.OPEN;
		}
		for (int var = 0; var < cells.length; var++) {
			if (program.moduleOf[var] >= 0 && cells[program.moduleOf[var]] == Variable.SILENT) {
				cells[var] = Variable.UNREAD; // who found the module silent knows that its codes are unread
			}
		}
		return cells;
	}
}
