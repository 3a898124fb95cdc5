package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.baywright.analysis.Variable;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/**
 * How what was found changed in the course of a job.
 *
 * @param works the repairs that were begun
 */
record Course(Bench bench, List<Work> works) {

	/** Returns what was found, in the order in which it was: "first 11.2 V, after the repair 12.7 V", "11.2 V, the same again"; the finding alone if there was no other. */
	String of(Bench.Line line) {
		Done done = bench.now().done();
		List<String> found = new ArrayList<>(done.inVain().stream().flatMap(failed -> failed.before().stream()).filter(before -> isOf(line, before.reading())).map(before -> bench.said(before.reading())).toList());
		found.addAll(done.again().stream().filter(again -> !again.afterwards() && isOf(line, again.reading())).map(Done.Again::words).toList());
		found.add(line.value());
		List<String> after = Stream.concat(done.again().stream().filter(again -> again.afterwards() && isOf(line, again.reading())).map(Done.Again::words),
				works.stream().flatMap(work -> work.read().stream()).filter(reading -> isOf(line, reading)).map(bench::said)).toList();
		List<String> before = told(found);
		String joined = String.join(", then ", before);
		return before.size() == 1 && after.isEmpty() ? joined : "first " + joined + (after.isEmpty() ? "" : ", after the repair " + String.join(", then ", told(after)));
	}

	/** Returns what was found, with what was the same again told once. */
	private static List<String> told(List<String> found) {
		List<String> told = new ArrayList<>();
		for (int i = 0, same = 1; i < found.size(); i += same, same = 1) {
			while (i + same < found.size() && found.get(i + same).equals(found.get(i))) {
				same++;
			}
			told.add(found.get(i) + (same == 1 ? "" : same == 2 ? ", the same again" : ", the same " + same + " times"));
		}
		return told;
	}

	/** Returns the places of the lines on the bench, in the order in which each thing was first found, whenever it was found again. */
	List<Integer> order() {
		List<Variable> first = new ArrayList<>();
		for (Bench.Vehicle vehicle : Stream.concat(bench.past().stream(), Stream.of(bench.now())).toList()) {
			List<Variable> found = vehicle.readings().stream().map(reading -> Variable.of(bench.base(), reading)).toList();
			// who took everything away began anew
			first.removeIf(variable -> found.isEmpty());
			found.stream().filter(variable -> !first.contains(variable)).forEach(first::add);
		}
		List<Bench.Line> lines = bench.lines();
		return IntStream.range(0, lines.size()).boxed().sorted(Comparator.comparing(place -> first.indexOf(lines.get(place).variable()))).toList();
	}

	private boolean isOf(Bench.Line line, Reading reading) {
		RuleBase base = bench.base();
		return Variable.of(base, reading).equals(line.variable());
	}
}
