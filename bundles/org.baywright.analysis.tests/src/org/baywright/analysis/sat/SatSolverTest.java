package org.baywright.analysis.sat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.baywright.analysis.proof.Minimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import com.microsoft.z3.Context;
import com.microsoft.z3.Solver;

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
	void nothingIsAskedForThoseWhoNoLongerWait() {
		SatSolver solver = pigeonhole(3, 3, 1000);
		Thread.currentThread().interrupt();
		try {
			assertThrows(CancellationException.class, solver::solve);
		} finally {
			assertTrue(Thread.interrupted());
		}
		assertEquals(Answer.YES, solver.solve());
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
		for (int v = 0; v < pigeons * holes; v++) {
			solver.newLiteral();
		}
		holes(pigeons, holes).forEach(clause -> solver.add(Arrays.stream(clause).map(SatSolverTest::literal).toArray()));
		return solver;
	}

	// ---- written as DIMACS text, read by both solvers with their own readers ------------------------------------------

	/**
	 * Families of instances whose answer is a theorem; as many variables and clauses as are published.
	 * hole6, hole7: SATLIB, DIMACS benchmark set, PHOLE (recipe and sizes seen). Parity along the edges of a graph:
	 * Tseitin 1968, on three-regular graphs as Urquhart (J. ACM 34, 1987; from memory) took them: it can hold exactly if
	 * the charges of the corners have an even sum; three edges at a corner make four clauses.
	 */
	@ParameterizedTest(name = "{0} {1} {2}")
	@CsvSource({ "hole, 7, 6, 42, 133, NO", "hole, 8, 7, 56, 204, NO", "hole, 6, 6, 36, 96, YES", "parity, 12, 1, 36, 96, NO",
			"parity, 12, 2, 36, 96, YES", "parity, 13, 7, 39, 104, NO", "parity, 20, 10, 60, 160, YES" })
	void familiesWithKnownAnswers(String family, int a, int b, int variables, int count, Answer expected) {
		String text = dimacs(variables, family.equals("hole") ? holes(a, b) : ladder(a, b));
		List<int[]> clauses = clauses(text);
		assertEquals(count, clauses.size());
		SatSolver solver = new SatSolver(1_000_000);
		assertEquals(expected, solver.solve(demanded(solver, clauses)));
		if (expected == Answer.YES) {
			assertHolds(solver, clauses);
		}
		try (Context context = new Context()) {
			assertEquals(expected, z3(context, text));
		}
	}

	/** Both families need every clause (a theorem, from memory); clauses of other variables are no part of a reason. */
	@ParameterizedTest(name = "{0} {1} {2}")
	@CsvSource({ "hole, 4, 3", "hole, 5, 4", "parity, 4, 1", "parity, 5, 3" })
	void aReasonHoldsEveryClauseThatIsNeededAndNoOther(String family, int a, int b) {
		List<int[]> clauses = family.equals("hole") ? holes(a, b) : ladder(a, b);
		int variables = clauses.stream().flatMapToInt(Arrays::stream).map(Math::abs).max().orElseThrow();
		List<int[]> all = new ArrayList<>();
		for (int[] clause : clauses) {
			all.add(new int[] { variables + 1 + all.size(), -(variables + 2 + all.size()) });
			all.add(clause);
		}
		assertEquals(dimacs(variables, clauses), dimacs(variables, reason(all)));
		try (Context context = new Context()) {
			assertMinimal(context, variables, clauses);
		}
	}

	/**
	 * Random 3-SAT at 4.26 clauses a variable, where about half have a model (Mitchell, Selman and Levesque, AAAI 1992;
	 * ratio from memory): Z3 gives the same answer, each model holds, each reason is enough and minimal.
	 */
	@Test
	void answersAsZ3() {
		Random random = new Random(426);
		int yes = 0;
		int no = 0;
		try (Context context = new Context()) {
			for (int i = 0; i < 120; i++) {
				int variables = 20 + random.nextInt(11);
				String text = dimacs(variables, threeSat(random, variables, (int) Math.round(4.26 * variables)));
				List<int[]> clauses = clauses(text);
				SatSolver solver = new SatSolver(1_000_000);
				Answer answer = solver.solve(demanded(solver, clauses));
				assertEquals(z3(context, text), answer, text);
				if (answer == Answer.YES) {
					yes++;
					assertHolds(solver, clauses);
					assertNull(reason(clauses));
				} else {
					no++;
					assertMinimal(context, variables, reason(clauses));
				}
			}
		}
		assertTrue(yes > 30 && no > 30, yes + " yes, " + no + " no");
	}

	/** Variables of the text come after the one that always holds, so that 1 is 2 in the solver. */
	private static int literal(int read) {
		return read > 0 ? read + SatSolver.TRUE : read - SatSolver.TRUE;
	}

	/** Adds clauses that hold only if they are demanded; returns what demands them. */
	private static int[] demanded(SatSolver solver, List<int[]> clauses) {
		clauses.stream().flatMapToInt(Arrays::stream).map(Math::abs).max().ifPresent(most -> {
			for (int v = 1; v <= most; v++) {
				assertEquals(literal(v), solver.newLiteral());
			}
		});
		int[] switches = new int[clauses.size()];
		for (int c = 0; c < switches.length; c++) {
			switches[c] = solver.newLiteral();
			solver.add(IntStream.concat(Arrays.stream(clauses.get(c)).map(SatSolverTest::literal), IntStream.of(-switches[c])).toArray());
		}
		return switches;
	}

	private static void assertHolds(SatSolver solver, List<int[]> clauses) {
		clauses.forEach(clause -> assertTrue(Arrays.stream(clause).map(SatSolverTest::literal).anyMatch(solver::holds),
				() -> Arrays.toString(clause)));
	}

	/** Returns the reason that the proofs would tell, in the order of the clauses; null if there is none. */
	private static List<int[]> reason(List<int[]> clauses) {
		SatSolver solver = new SatSolver(1_000_000);
		List<Integer> switches = Arrays.stream(demanded(solver, clauses)).boxed().toList();
		return Minimal.conflict(solver, List.of(), switches)
				.map(core -> core.stream().map(one -> clauses.get(switches.indexOf(one))).toList()).orElse(null);
	}

	private static void assertMinimal(Context context, int variables, List<int[]> core) {
		assertEquals(Answer.NO, z3(context, dimacs(variables, core)), "enough");
		for (int[] one : core) {
			assertEquals(Answer.YES, z3(context, dimacs(variables, core.stream().filter(other -> other != one).toList())),
					() -> Arrays.toString(one) + " is needed");
		}
	}

	private static Answer z3(Context context, String dimacs) {
		Solver solver = context.mkSolver();
		solver.fromString(dimacs);
		return switch (solver.check()) {
		case SATISFIABLE -> Answer.YES;
		case UNSATISFIABLE -> Answer.NO;
		case UNKNOWN -> Answer.UNDECIDED;
		};
	}

	/** The format of the Second DIMACS Challenge, 1993 (from memory). */
	private static String dimacs(int variables, List<int[]> clauses) {
		StringBuilder text = new StringBuilder("p cnf " + variables + " " + clauses.size() + "\n");
		clauses.forEach(clause -> {
			Arrays.stream(clause).forEach(literal -> text.append(literal).append(' '));
			text.append("0\n");
		});
		return text.toString();
	}

	private static List<int[]> clauses(String dimacs) {
		return dimacs.lines().filter(line -> !line.startsWith("p"))
				.map(line -> Arrays.stream(line.split(" ")).mapToInt(Integer::parseInt).takeWhile(literal -> literal != 0).toArray()).toList();
	}

	private static List<int[]> holes(int pigeons, int holes) {
		List<int[]> clauses = new ArrayList<>();
		for (int pigeon = 0; pigeon < pigeons; pigeon++) {
			clauses.add(IntStream.rangeClosed(sits(pigeon, 1, holes), sits(pigeon, holes, holes)).toArray());
		}
		for (int hole = 1; hole <= holes; hole++) {
			for (int i = 0; i < pigeons; i++) {
				for (int j = i + 1; j < pigeons; j++) {
					clauses.add(new int[] { -sits(i, hole, holes), -sits(j, hole, holes) });
				}
			}
		}
		return clauses;
	}

	private static int sits(int pigeon, int hole, int holes) {
		return pigeon * holes + hole;
	}

	/** A ladder closed to a ring: at each of its corners an odd number of edges holds if it is charged, else an even one. */
	private static List<int[]> ladder(int rungs, int charged) {
		List<int[]> clauses = new ArrayList<>();
		for (int corner = 0; corner < 2 * rungs; corner++) {
			int side = corner / rungs;
			int rung = corner % rungs;
			int[] edges = { side * rungs + rung + 1, side * rungs + (rung + rungs - 1) % rungs + 1, 2 * rungs + rung + 1 };
			for (int signs = 0; signs < 8; signs++) {
				if (Integer.bitCount(signs) % 2 == (corner < charged ? 0 : 1)) {
					int negated = signs;
					clauses.add(IntStream.range(0, 3).map(e -> (negated >> e & 1) == 1 ? -edges[e] : edges[e]).toArray());
				}
			}
		}
		return clauses;
	}

	private static List<int[]> threeSat(Random random, int variables, int count) {
		return Stream.generate(() -> random.ints(1, variables + 1).distinct().limit(3).map(v -> random.nextBoolean() ? v : -v).toArray())
				.limit(count).toList();
	}
}
