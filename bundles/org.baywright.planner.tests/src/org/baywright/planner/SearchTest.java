package org.baywright.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@link Search} and {@link Matrix}, against the literature and against exhaustive search. */
class SearchTest {

	private static final double CLOSE = 1e-9;
	private static final int ENOUGH = 1_000_000;

	/** The six-state example of Pattipati and Alexandridis, IEEE Trans. SMC 20(4), 1990 (matrix from memory, optimum reproduced). */
	private static final double[] SIX = { .70, .01, .02, .10, .05, .12 };
	private static final String[] SHOWN = { "00000", "01001", "00110", "10011", "11000", "11110" };

	private static Matrix six(double... costs) {
		return new Matrix(SIX, IntStream.range(0, 5)
				.mapToObj(test -> Matrix.Check.certain("t" + (test + 1), costs[test], Arrays.stream(SHOWN).mapToInt(row -> row.charAt(test) - '0').toArray()))
				.toList());
	}

	private static Search.Found solve(Matrix matrix) {
		Search.Found found = Search.from(matrix.begin(), ENOUGH, () -> false);
		assertTrue(found.isBest());
		assertEquals(found.cost(), found.plan().expectedCost(), CLOSE);
		return found;
	}

	@Test
	void theSixStateExample() {
		assertEquals(2.18, solve(six(1, 1, 1, 1, 1)).cost(), CLOSE);
		assertEquals(2.85, solve(six(1, 2, 3, 1, 1)).cost(), CLOSE);
	}

	@Test
	void entropyIsNotMoreThanHuffmanThanTheOptimumThanGreed() {
		Position begin = six(1, 1, 1, 1, 1).begin();
		assertEquals(1.454873, begin.uncertainty(), 1e-6);
		assertEquals(1.59, Matrix.codeLength(Arrays.stream(SIX).boxed().toList(), 2), CLOSE);
		assertEquals(1.59, begin.bound(), CLOSE);
		Search.Found greedy = Search.from(begin, 0, () -> false);
		assertEquals(2.86, greedy.cost(), CLOSE);
		assertEquals(1.59, greedy.least(), CLOSE);
		assertFalse(greedy.isBest());
		assertEquals((2.86 - 1.59) / 1.59, greedy.gap(), CLOSE);
	}

	/** The shares of IEEE 1522 (from memory) on the six-state matrix, each fault as likely as its prior says, worked out by hand. */
	@Test
	void whatTheTestsTellApart() {
		Testability all = some(0, 1, 2, 3, 4).testability(0);
		assertEquals(1, all.detection(), CLOSE);
		assertEquals(1, all.isolation(), CLOSE);
		Testability three = some(1, 2, 3).testability(0);
		assertEquals(List.of(List.of(1, 4), List.of(2), List.of(3), List.of(5)), three.groups());
		assertEquals(1, three.detection(), CLOSE);
		assertEquals(.24 / .30, three.isolation(), CLOSE);
		Testability two = some(0, 2).testability(0);
		assertEquals(.9667, two.detection(), 5e-5);
		assertEquals(.4828, two.isolation(), 5e-5);
		assertEquals(new Testability(0, 1, List.of()), some().testability(0));
	}

	/** A plan ends once for each group that its tests tell apart. */
	@Test
	void aPlanEndsOncePerGroup() {
		assertEquals(6, ends(solve(some(0, 1, 2, 3, 4)).plan()));
		assertEquals(5, ends(solve(some(1, 2, 3)).plan()));
	}

	private static Matrix some(int... tests) {
		return new Matrix(SIX, IntStream.of(tests)
				.mapToObj(test -> Matrix.Check.certain("t" + (test + 1), 1, Arrays.stream(SHOWN).mapToInt(row -> row.charAt(test) - '0').toArray())).toList());
	}

	private static int ends(Plan plan) {
		return plan.branches().isEmpty() ? 1 : plan.branches().stream().mapToInt(branch -> ends(branch.plan())).sum();
	}

	/** Huffman 1952, with three signs: the example is worked out by hand. */
	@Test
	void codesOfThreeSigns() {
		assertEquals(1.0, Matrix.codeLength(List.of(.5, .3, .2), 3), CLOSE);
		// .1 .2 and a filler become .3; then .3 .3 .4 become 1
		assertEquals(1.3, Matrix.codeLength(List.of(.1, .2, .3, .4), 3), CLOSE);
		assertEquals(0, Matrix.codeLength(List.of(1.0), 2), CLOSE);
	}

	private static Matrix.Check showing(int cause, int causes, double cost) {
		return Matrix.Check.certain("check " + (cause + 1), cost, IntStream.range(0, causes).map(each -> each == cause ? 1 : 0).toArray()).ending(1);
	}

	private static List<String> order(Plan plan) {
		List<String> order = new ArrayList<>();
		for (Plan next = plan; next.step().isPresent(); next = next.branches().get(0).plan()) {
			order.add(next.step().get().name());
			if (next.branches().size() == 1) {
				break;
			}
		}
		return order;
	}

	/** The ratio rule for checks each of which shows only its own fault, which must be shown: the operations research literature of the 1950s to 70s. */
	@Test
	void checksOfOneFaultByLikelihoodOverCost() {
		double[] p = { .5, .3, .2 };
		double[] costs = { 4, 2, 1 };
		Search.Found found = solve(new Matrix(p, IntStream.range(0, 3).mapToObj(cause -> showing(cause, 3, costs[cause])).toList()));
		assertEquals(4.6, found.cost(), CLOSE);
		assertEquals(List.of("check 3", "check 2", "check 1"), order(found.plan()));
	}

	@ParameterizedTest
	@ValueSource(longs = { 1, 2, 3 })
	void theRatioRuleOnRandomCases(long seed) {
		Random random = new Random(seed);
		for (int round = 0; round < 300; round++) {
			int n = 2 + random.nextInt(5);
			double[] p = new double[n];
			double[] costs = new double[n];
			double sum = 0;
			for (int i = 0; i < n; i++) {
				p[i] = 1 + random.nextInt(50);
				costs[i] = 1 + random.nextInt(30);
				sum += p[i];
			}
			Integer[] order = IntStream.range(0, n).boxed().sorted((a, b) -> Double.compare(p[b] / costs[b], p[a] / costs[a])).toArray(Integer[]::new);
			double expected = 0;
			double spent = 0;
			for (int cause : order) {
				spent += costs[cause];
				expected += p[cause] / sum * spent;
			}
			assertEquals(expected, solve(new Matrix(p, IntStream.range(0, n).mapToObj(cause -> showing(cause, n, costs[cause])).toList())).cost(), CLOSE);
		}
	}

	/** Thousands of random problems with up to three outcomes, whose ends differ, some of them uncertain. */
	@ParameterizedTest
	@ValueSource(longs = { 11, 12, 13, 14 })
	void asExhaustiveSearch(long seed) {
		Random random = new Random(seed);
		for (int round = 0; round < 600; round++) {
			double[] prior = new double[1 + random.nextInt(5)];
			for (int i = 0; i < prior.length; i++) {
				prior[i] = 1 + random.nextInt(20);
			}
			List<Matrix.Check> checks = new ArrayList<>();
			boolean certain = random.nextInt(3) > 0;
			for (int i = random.nextInt(5); i >= 0; i--) {
				checks.add(check(random, "c" + i, prior.length, certain));
			}
			Matrix matrix = new Matrix(prior, checks);
			double best = Exhaustive.cost(prior, checks);
			Search.Found found = solve(matrix);
			assertEquals(best, found.cost(), CLOSE, () -> "seed " + seed);
			assertTrue(matrix.begin().bound() <= best + CLOSE, () -> "a bound above the best, seed " + seed);
			Search.Found simple = Search.from(matrix.begin(), 0, () -> false);
			Search.Found hurried = Search.from(matrix.begin(), random.nextInt(4), () -> false);
			assertTrue(hurried.least() <= best + CLOSE && best <= hurried.cost() + CLOSE, () -> "the best lies outside of what was told, seed " + seed);
			assertTrue(hurried.cost() <= simple.cost() + CLOSE, () -> "looking ahead made it worse, seed " + seed);
			assertTrue(!hurried.isBest() || Math.abs(hurried.cost() - best) < CLOSE);
		}
	}

	private static Matrix.Check check(Random random, String name, int causes, boolean certain) {
		int outcomes = 2 + random.nextInt(2);
		double[][] likelihood = new double[outcomes][causes];
		for (int cause = 0; cause < causes; cause++) {
			if (certain || random.nextBoolean()) {
				likelihood[random.nextInt(outcomes)][cause] = 1;
			} else {
				double[] parts = IntStream.range(0, outcomes).mapToDouble(i -> random.nextInt(4)).toArray();
				parts[random.nextInt(outcomes)] += 1;
				double sum = Arrays.stream(parts).sum();
				for (int outcome = 0; outcome < outcomes; outcome++) {
					likelihood[outcome][cause] = parts[outcome] / sum;
				}
			}
		}
		boolean[] ends = new boolean[outcomes];
		ends[0] = random.nextInt(3) == 0;
		return new Matrix.Check(name, 1 + random.nextInt(9), likelihood, ends);
	}

	/** Bayes' rule on the textbook case of a rare fault: one in a hundred has it, 9 of 10 of these and 8 of 100 of the others react. */
	@Test
	void aRareFaultAndATestThatIsNotSure() {
		Matrix.Check check = new Matrix.Check("reacts", 1, new double[][] { { .9, .08 }, { .1, .92 } }, new boolean[2]);
		Position begin = new Matrix(new double[] { .01, .99 }, List.of(check)).begin();
		Position.Step step = begin.steps().get(0);
		assertEquals(.0882, step.probability(0), CLOSE);
		double share = .009 / .0882;
		double bits = -(share * Math.log(share) + (1 - share) * Math.log(1 - share)) / Math.log(2);
		assertEquals(bits, step.after(0).uncertainty(), CLOSE);
		assertEquals(List.of(), step.after(0).steps());
	}

	@Test
	void theSameEachTime() {
		for (int i = 0; i < 3; i++) {
			assertEquals(order(solve(six(1, 1, 1, 1, 1)).plan()), order(solve(six(1, 1, 1, 1, 1)).plan()));
		}
		assertEquals(solve(six(1, 2, 3, 1, 1)).plan().worstCost(), solve(six(1, 2, 3, 1, 1)).plan().worstCost(), 0);
	}

	@Test
	void itStopsWhenAsked() {
		assertThrows(CancellationException.class, () -> Search.from(six(1, 1, 1, 1, 1).begin(), ENOUGH, () -> true));
	}

	@Test
	void numbersThatCannotBe() {
		assertThrows(IllegalArgumentException.class, () -> new Matrix(new double[] { 0, 1 }, List.of()));
		assertThrows(IllegalArgumentException.class, () -> new Matrix(new double[] { 1 }, List.of(Matrix.Check.certain("free", 0, 0))));
		assertThrows(IllegalArgumentException.class, () -> new Matrix(new double[] { 1 }, List.of(new Matrix.Check("half", 1, new double[][] { { .5 } }, new boolean[1]))));
	}

	/**
	 * Of four causes one check tells two from two; the first two are repaired one after the other, for 4 and 6, the cheaper and likelier
	 * first. Half of the vehicles have one of them: .3 the first, .2 the second. In vain goes 4 in .2 of all, so .8, which is 1.6 for
	 * each that comes there.
	 */
	@Test
	void whatAStepThatSplitsAGroupMayCost() {
		double[] prior = { .3, .2, .4, .1 };
		Matrix.Check halves = Matrix.Check.certain("halves", 1, 0, 0, 1, 1);
		Matrix.Check last = Matrix.Check.certain("last", 1, 0, 0, 0, 1);
		List<Ends.Group> groups = Ends.groups(solve(new Matrix(prior, List.of(halves, last))).plan(), new double[] { 4, 6, 1, 1 });
		assertEquals(List.of(List.of(0, 1)), groups.stream().map(Ends.Group::causes).toList());
		assertEquals(.5, groups.get(0).reached(), CLOSE);
		assertEquals(1.6, groups.get(0).pays().orElseThrow(), CLOSE);
		// without a repair of the second that is not known; of one cause that nothing splits there is no group
		assertTrue(Ends.groups(solve(new Matrix(prior, List.of(halves, last))).plan(), new double[] { 4, Double.NaN, 1, 1 }).get(0).pays().isEmpty());
		assertEquals(List.of(), Ends.groups(solve(new Matrix(prior, List.of(halves, last, Matrix.Check.certain("first", 1, 0, 1, 1, 1)))).plan(), new double[4]));
		// where nobody looked on nothing is said
		assertEquals(List.of(), Ends.groups(Search.from(new Matrix(prior, List.of(halves, last)).begin(), 0, 0, () -> false).plan(), new double[4]));
	}

	/** Repairs are checks that end the search: to split at once is better than not at all exactly below that cost, and of two causes the search does so. */
	@ParameterizedTest
	@ValueSource(longs = { 5, 6, 7 })
	void splittingAGroupPaysBelowThatCost(long seed) {
		Random random = new Random(seed);
		for (int round = 0; round < 100; round++) {
			int n = 2 + random.nextInt(4);
			double[] prior = IntStream.range(0, n).mapToDouble(i -> 1 + random.nextInt(20)).toArray();
			double[] repairs = IntStream.range(0, n).mapToDouble(i -> 5 + random.nextInt(30)).toArray();
			double pays = Ends.groups(solve(new Matrix(prior, List.of())).plan(), repairs).get(0).pays().orElseThrow();
			List<Matrix.Check> checks = new ArrayList<>(IntStream.range(0, n).mapToObj(cause -> showing(cause, n, repairs[cause])).toList());
			double without = solve(new Matrix(prior, checks)).cost();
			for (double part : new double[] { .95, 1.05 }) {
				Matrix.Check split = Matrix.Check.certain("split", part * pays, IntStream.range(0, n).toArray());
				double right = IntStream.range(0, n).mapToDouble(cause -> prior[cause] * repairs[cause]).sum() / Arrays.stream(prior).sum();
				assertEquals(part < 1, split.cost() + right < without, () -> split.cost() + " at once, and " + without + " without");
				List<Matrix.Check> more = new ArrayList<>(checks);
				more.add(split);
				Plan plan = solve(new Matrix(prior, more)).plan();
				assertTrue(n > 2 || plan.step().orElseThrow().name().equals("split") == part < 1, () -> "first " + plan.step().get().name());
			}
		}
	}

	/** What is expected, what is worst, and how often a plan ends where, on a plan that is no tree. */
	@Test
	void whatStepsTakeOnTheWay() {
		Plan plan = solve(six(1, 2, 3, 1, 1)).plan();
		assertEquals(plan.expectedCost(), plan.expected(Position.Step::cost, 0), CLOSE);
		assertEquals(plan.worstCost(), plan.worst(Position.Step::cost, 0), CLOSE);
		assertEquals(1, plan.ends().values().stream().mapToDouble(Double::doubleValue).sum(), CLOSE);
		assertEquals(6, plan.ends().size());
		Plan none = Search.from(six(1, 2, 3, 1, 1).begin(), 0, 0, () -> false).plan();
		assertTrue(none.isCut());
		assertEquals(none.worstCost() / 2, none.worst(Position.Step::cost, .5), CLOSE);
		assertEquals(Map.of(none, 1.0), none.ends());
	}

	/** A whole plan begins with what is proposed at once unless it is the best. */
	@ParameterizedTest
	@ValueSource(longs = { 21, 22 })
	void aWholePlanBeginsWithWhatIsProposed(long seed) {
		Random random = new Random(seed);
		int best = 0;
		for (int round = 0; round < 12; round++) {
			int n = 4 + 2 * round;
			double[] prior = IntStream.range(0, n).mapToDouble(i -> 1 + random.nextInt(20)).toArray();
			Matrix matrix = new Matrix(prior, IntStream.range(0, n).mapToObj(i -> check(random, "c" + i, n, true)).toList());
			Search.Found whole = Proposals.whole(matrix.begin(), 1, () -> false);
			best += whole.isBest() ? 1 : 0;
			assertTrue(whole.least() <= whole.cost() + CLOSE);
			if (!whole.isBest()) {
				assertEquals(Proposals.at(matrix.begin(), 1, Proposals.Care.QUICK, () -> false).steps().get(0).step().name(), whole.plan().step().orElseThrow().name());
			}
		}
		assertTrue(best > 0 && best < 12, best + " of 12 were the best");
	}
}
