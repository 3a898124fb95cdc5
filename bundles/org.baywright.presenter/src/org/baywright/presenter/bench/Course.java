package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;
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

	/** Returns what was found, in the order in which it was: "first 11.2 V, after the repair 12.7 V"; the finding alone if there was no other. */
	String of(Bench.Line line) {
		Done done = bench.now().done();
		List<String> found = new ArrayList<>(done.inVain().stream().flatMap(failed -> failed.before().stream()).filter(before -> isOf(line, before.reading())).map(before -> bench.said(before.reading())).toList());
		found.addAll(done.again().stream().filter(again -> !again.afterwards() && isOf(line, again.reading())).map(Done.Again::words).toList());
		found.add(line.value());
		List<String> after = Stream.concat(done.again().stream().filter(again -> again.afterwards() && isOf(line, again.reading())).map(Done.Again::words),
				works.stream().flatMap(work -> work.read().stream()).filter(reading -> isOf(line, reading)).map(bench::said)).toList();
		String before = String.join(", then ", found);
		return found.size() == 1 && after.isEmpty() ? before : "first " + before + (after.isEmpty() ? "" : ", after the repair " + String.join(", then ", after));
	}

	private boolean isOf(Bench.Line line, Reading reading) {
		RuleBase base = bench.base();
		return Variable.of(base, reading).equals(line.variable());
	}
}
