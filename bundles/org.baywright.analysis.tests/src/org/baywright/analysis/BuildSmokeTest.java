package org.baywright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.z3.Context;
import com.microsoft.z3.Solver;
import com.microsoft.z3.Status;
import org.junit.jupiter.api.Test;
import org.sat4j.core.VecInt;
import org.sat4j.minisat.SolverFactory;
import org.sat4j.specs.ISolver;

class BuildSmokeTest {

	@Test
	void solverDecidesUnderAssumptions() throws Exception {
		ISolver solver = SolverFactory.newDefault();
		solver.newVar(2);
		solver.addClause(new VecInt(new int[] { -1, 2 }));
		assertTrue(solver.isSatisfiable(new VecInt(new int[] { 1 })));
		assertFalse(solver.isSatisfiable(new VecInt(new int[] { 1, -2 })));
	}

	@Test
	void independentSolverLoadsItsNativeLibrary() {
		try (Context context = new Context()) {
			Solver solver = context.mkSolver();
			solver.add(context.mkNot(context.mkTrue()));
			assertEquals(Status.UNSATISFIABLE, solver.check());
		}
	}
}
