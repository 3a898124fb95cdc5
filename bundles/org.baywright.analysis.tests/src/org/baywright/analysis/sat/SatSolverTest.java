package org.baywright.analysis.sat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pigeonhole principle is a fact of arithmetic; Haken (1985) showed it hard for resolution. */
class SatSolverTest {

	@ParameterizedTest
	@CsvSource({ "3, 3, YES", "4, 3, NO", "5, 5, YES", "6, 5, NO" })
	void pigeonsAndHoles(int pigeons, int holes, Answer expected) {
		assertEquals(expected, pigeonhole(pigeons, holes, 1_000_000).solve());
	}

	@ParameterizedTest
	@ValueSource(ints = { 1, 50 })
	void aLimitThatIsReachedIsSaid(int conflicts) {
		assertEquals(Answer.UNDECIDED, pigeonhole(10, 9, conflicts).solve());
	}

	@Test
	void assumptionsLeaveNothingBehind() {
		SatSolver solver = new SatSolver(1000);
		int a = solver.newLiteral();
		int b = solver.newLiteral();
		solver.add(-a, b);
		assertEquals(Answer.NO, solver.solve(a, -b));
		assertEquals(Answer.YES, solver.solve(a));
		assertTrue(solver.holds(b));
		assertEquals(Answer.YES, solver.solve(-b));
		assertTrue(solver.holds(-a));
	}

	@Test
	void clausesThatContradictEachOtherAnswerNo() {
		SatSolver solver = new SatSolver(1000);
		int a = solver.newLiteral();
		solver.add(a);
		solver.add(-a);
		assertEquals(Answer.NO, solver.solve());
	}

	private static SatSolver pigeonhole(int pigeons, int holes, int conflicts) {
		SatSolver solver = new SatSolver(conflicts);
		int[][] sits = new int[pigeons][holes];
		for (int[] pigeon : sits) {
			for (int hole = 0; hole < holes; hole++) {
				pigeon[hole] = solver.newLiteral();
			}
			solver.add(pigeon);
		}
		for (int hole = 0; hole < holes; hole++) {
			for (int i = 0; i < pigeons; i++) {
				for (int j = i + 1; j < pigeons; j++) {
					solver.add(-sits[i][hole], -sits[j][hole]);
				}
			}
		}
		return solver;
	}
}
