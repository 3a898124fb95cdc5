package org.baywright.analysis.sat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import com.microsoft.z3.BoolExpr;
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

	/**
	 * Random 3-SAT at 4.26 clauses a variable, where about half have a model (Mitchell, Selman and Levesque, AAAI 1992;
	 * ratio from memory), and chains of parity: Z3 gives the same answer, each model holds, each core is minimal.
	 */
	@Test
	void answersAsZ3() {
		try (Context context = new Context()) {
			answersAsZ3(context);
		}
	}

	private static void answersAsZ3(Context context) {
		Random random = new Random(426);
		int yes = 0;
		int no = 0;
		for (int i = 0; i < 120; i++) {
			int n = 20 + random.nextInt(11);
			List<int[]> clauses = i % 5 == 0 ? parity(n, i % 10 == 0) : threeSat(random, n, (int) Math.round(4.26 * n));
			SatSolver solver = new SatSolver(1_000_000);
			int[] names = new int[n + 1];
			for (int v = 1; v <= n; v++) {
				names[v] = solver.newLiteral();
			}
			int[] chosen = new int[clauses.size()];
			for (int c = 0; c < chosen.length; c++) {
				chosen[c] = solver.newLiteral();
				int[] literals = Arrays.copyOf(named(clauses.get(c), names), clauses.get(c).length + 1);
				literals[literals.length - 1] = -chosen[c];
				solver.add(literals);
			}
			Answer answer = solver.solve(chosen);
			assertEquals(z3(context, clauses), answer, "instance " + i);
			if (answer == Answer.YES) {
				yes++;
				assertTrue(clauses.stream().allMatch(clause -> Arrays.stream(named(clause, names)).anyMatch(solver::holds)));
				continue;
			}
			no++;
			List<Integer> core = new ArrayList<>();
			for (int c = 0; c < chosen.length; c++) {
				core.add(c);
			}
			for (int c = 0; c < chosen.length; c++) {
				Integer out = c;
				core.remove(out);
				if (solver.solve(core.stream().mapToInt(kept -> chosen[kept]).toArray()) == Answer.YES) {
					core.add(out);
				}
			}
			assertEquals(Answer.NO, z3(context, core.stream().map(clauses::get).toList()), "core " + i);
			for (Integer one : core) {
				assertEquals(Answer.YES, z3(context, core.stream().filter(c -> !c.equals(one)).map(clauses::get).toList()), "core " + i);
			}
		}
		assertTrue(yes > 30 && no > 30, yes + " yes, " + no + " no");
	}

	private static int[] named(int[] clause, int[] names) {
		return Arrays.stream(clause).map(literal -> Integer.signum(literal) * names[Math.abs(literal)]).toArray();
	}

	private static List<int[]> threeSat(Random random, int variables, int count) {
		List<int[]> clauses = new ArrayList<>();
		while (clauses.size() < count) {
			int[] of = random.ints(1, variables + 1).distinct().limit(3).map(v -> random.nextBoolean() ? v : -v).toArray();
			clauses.add(of);
		}
		return clauses;
	}

	/** Each variable differs from the next; round a ring that is possible for an even number only. */
	private static List<int[]> parity(int variables, boolean even) {
		int ring = variables - (variables % 2 == 0 == even ? 0 : 1);
		List<int[]> clauses = new ArrayList<>();
		for (int v = 1; v <= ring; v++) {
			int next = v == ring ? 1 : v + 1;
			clauses.add(new int[] { v, next });
			clauses.add(new int[] { -v, -next });
		}
		return clauses;
	}

	private static Answer z3(Context context, List<int[]> clauses) {
		Solver solver = context.mkSolver();
		for (int[] clause : clauses) {
			solver.add(context.mkOr(Arrays.stream(clause).mapToObj(literal -> {
				BoolExpr variable = context.mkBoolConst("v" + Math.abs(literal));
				return literal > 0 ? variable : context.mkNot(variable);
			}).toArray(BoolExpr[]::new)));
		}
		return switch (solver.check()) {
		case SATISFIABLE -> Answer.YES;
		case UNSATISFIABLE -> Answer.NO;
		case UNKNOWN -> Answer.UNDECIDED;
		};
	}
}
