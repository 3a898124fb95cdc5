package org.baywright.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.model.RuleBase;
import org.baywright.planner.Exhaustive;
import org.baywright.planner.Matrix;
import org.baywright.planner.Proposals;
import org.baywright.planner.Search;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Consulting;
import org.baywright.presenter.bench.Shown;
import org.baywright.presenter.bench.Subject;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What to do next: by size, beside exhaustive search where that ends, and on the bench. */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx4g")
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class PlanBenchmark {

	private static final long SEED = 7;
	private static final int ENOUGH = 1_000_000;
	private static final double ROUNDING = 1e-9;

	/** As many faults as tests. */
	@State(Scope.Benchmark)
	public static class Large {

		@Param({ "50", "200", "500" })
		public int size;

		private Matrix matrix;

		@Setup
		public void make() {
			matrix = PlanProblems.faults(size, size, SEED).matrix();
		}
	}

	/** As many faults as tests, so few that all orders can be tried. */
	@State(Scope.Benchmark)
	public static class Small {

		@Param({ "8", "10", "12" })
		public int size;

		private PlanProblems.Faults faults;
		private Matrix matrix;

		@Setup
		public void make() {
			faults = PlanProblems.faults(size, size, SEED);
			matrix = faults.matrix();
			Search.Found found = Search.from(matrix.begin(), ENOUGH, () -> false);
			double best = Exhaustive.cost(faults.prior(), faults.tests());
			if (!found.isBest() || Math.abs(found.cost() - best) > ROUNDING * best) {
				throw new IllegalStateException(found.cost() + " is to be expected, and the best of all orders is " + best);
			}
		}
	}

	/** Vehicles on the bench, each after one entry more, led by what the bench proposes. */
	@State(Scope.Benchmark)
	public static class Vehicles {

		private static final int JOBS = 4;

		private final Consulting consulting = new Consulting();
		private final List<Bench> benches = new ArrayList<>();
		private int next;

		@Setup
		public void lead() {
			RuleBase base = PlanProblems.rules();
			Random random = new Random(SEED);
			for (int job = 0; job < JOBS; job++) {
				base.signs().stream().filter(sign -> !sign.name().contains("_")).forEach(sign -> lead(Bench.of(base).enter(new Variable(Variable.Kind.SIGN, sign.name()), "present"), random));
			}
		}

		private void lead(Bench begun, Random random) {
			Bench bench = begun;
			for (Shown shown = show(bench); shown.lead().first().isPresent(); shown = show(bench)) {
				Subject subject = shown.lead().first().get().asks().get(0);
				String answer = subject.choices().isEmpty() ? "" + random.nextInt(15) : subject.choices().get(random.nextInt(subject.choices().size())).text();
				Bench after = bench.enter(subject.variable(), answer);
				if (after.now().readings().size() == bench.now().readings().size()) {
					throw new IllegalStateException(subject.variable() + " " + answer + ": " + after.message());
				}
				bench = after;
			}
		}

		private Shown show(Bench bench) {
			benches.add(bench);
			return consulting.show(bench, Listener.NONE);
		}
	}

	@Benchmark
	public Proposals nextStep(Large large) {
		return Proposals.at(large.matrix.begin(), 1, Proposals.Care.QUICK, () -> false);
	}

	@Benchmark
	public Search.Found best(Small small) {
		return Search.from(small.matrix.begin(), ENOUGH, () -> false);
	}

	@Benchmark
	public double exhaustive(Small small) {
		return Exhaustive.cost(small.faults.prior(), small.faults.tests());
	}

	/** From an entry to what is shown. */
	@Benchmark
	public Shown bench(Vehicles vehicles) {
		vehicles.next = (vehicles.next + 1) % vehicles.benches.size();
		return vehicles.consulting.show(vehicles.benches.get(vehicles.next), Listener.NONE);
	}
}
