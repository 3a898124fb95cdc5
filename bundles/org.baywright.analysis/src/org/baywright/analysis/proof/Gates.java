package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;

import org.baywright.analysis.sat.SatSolver;

/** Conjunction and disjunction as new literals, with constants folded. */
final class Gates {

	private Gates() {
	}

	/** Returns a literal that holds exactly when all of the given do. */
	static int and(SatSolver solver, List<Integer> literals) {
		return -or(solver, literals.stream().map(literal -> -literal).toList());
	}

	/** Returns a literal that holds exactly when one of the given does. */
	static int or(SatSolver solver, List<Integer> literals) {
		List<Integer> open = new ArrayList<>();
		for (int literal : literals) {
			if (literal == SatSolver.TRUE) {
				return SatSolver.TRUE;
			}
			if (literal != -SatSolver.TRUE && !open.contains(literal)) {
				open.add(literal);
			}
		}
		if (open.isEmpty()) {
			return -SatSolver.TRUE;
		} else if (open.size() == 1) {
			return open.get(0);
		}
		int gate = solver.newLiteral();
		int[] clause = new int[open.size() + 1];
		for (int i = 0; i < open.size(); i++) {
			clause[i] = open.get(i);
			solver.add(gate, -open.get(i));
		}
		clause[open.size()] = -gate;
		solver.add(clause);
		return gate;
	}
}
