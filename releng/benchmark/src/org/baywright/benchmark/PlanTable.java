package org.baywright.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Family;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.planner.Diagnosis;
import org.baywright.presenter.bench.Subject;
import org.baywright.presenter.plan.PlanShown;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;
import org.openjdk.jmh.util.Statistics;

/** Measures the planner and prints a table, the aim beside each figure. The arguments are the folders of rule projects. */
public final class PlanTable {

	private static final int REPEATS = 3;
	private static final int MEDIAN = 50;
	private static final int MOST = 90;

	private PlanTable() {
	}

	public static void main(String[] folders) throws RunnerException, IOException {
		Map<String, Statistics> measured = new HashMap<>();
		for (RunResult result : new Runner(new OptionsBuilder().include(PlanBenchmark.class.getSimpleName()).verbosity(VerboseMode.SILENT).build()).run()) {
			String name = result.getPrimaryResult().getLabel();
			measured.put(Optional.ofNullable(result.getParams().getParam("size")).map(size -> name + " " + size).orElse(name), result.getPrimaryResult().getStatistics());
		}
		print("| what | measured | aim |");
		print("| --- | ---: | ---: |");
		for (int size : new int[] { 50, 200, 500 }) {
			print("| next step, %d faults x %d tests, median (90 %%) | %s | %s |", size, size, say(measured.get("nextStep " + size)), size == 500 ? "50 ms, later 10 ms" : "");
		}
		for (int size : new int[] { 8, 10, 12 }) {
			Statistics best = measured.get("best " + size);
			Statistics all = measured.get("exhaustive " + size);
			print("| best order, %d x %d, median (90 %%); all orders, the same cost | %s; %s, %.0f times | |", size, size, say(best), say(all), all.getPercentile(MEDIAN) / best.getPercentile(MEDIAN));
		}
		for (String folder : folders) {
			List<Double> times = plans(RuleProject.open(Path.of(folder)).snapshot().rules());
			print("| whole plan of a complaint, %s, %d complaints, median (worst) | %.0f ms (%.0f ms) | 1000 ms |", Path.of(folder).getFileName(), times.size(), times.get(times.size() / 2),
					times.get(times.size() - 1));
		}
		print("| bench, from entry to answer, 200 rules, median (90 %%) | %s | 100 ms |", say(measured.get("bench")));
	}

	/** Returns what the plan of each complaint of each family takes, the median of some repeats, ascending, in ms. */
	private static List<Double> plans(RuleBase base) {
		List<Double> times = new ArrayList<>();
		for (Family family : base.vehicleFamilies()) {
			for (Subject sign : PlanShown.complaints(base, family.name())) {
				List<Double> repeats = new ArrayList<>();
				for (int i = 0; i < REPEATS; i++) {
					long start = System.nanoTime();
					Diagnosis.of(base, family.name(), List.of(new Reading.SignSeen(sign.variable().name(), true, Span.NONE))).ifPresent(diagnosis -> diagnosis.whole(() -> false));
					repeats.add((System.nanoTime() - start) / 1e6);
				}
				Collections.sort(repeats);
				times.add(repeats.get(REPEATS / 2));
			}
		}
		Collections.sort(times);
		return times;
	}

	private static String say(Statistics times) {
		return String.format(Locale.ROOT, "%s ms (%s ms)", round(times.getPercentile(MEDIAN)), round(times.getPercentile(MOST)));
	}

	private static String round(double ms) {
		return String.format(Locale.ROOT, ms < 1 ? "%.2f" : ms < 10 ? "%.1f" : "%.0f", ms);
	}

	private static void print(String format, Object... cells) {
		System.out.println(String.format(Locale.ROOT, format, cells));
	}
}
