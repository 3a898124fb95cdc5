package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

import org.baywright.analysis.Consultation.Clash;
import org.baywright.model.Reading;

/** Finds out which laws some findings break. */
final class Laws {

	private final Program program;
	private final Encoding encoding;

	Laws(Program program, int conflictLimit) {
		this.program = program;
		encoding = Encoding.lawless(program, conflictLimit);
	}

	/** Returns the findings and laws that clash, as few as can be; all findings if the limit was reached on the way. */
	Clash clash(Bench bench) {
		List<Integer> laws = new ArrayList<>();
		for (int law = 0; law < program.lawFormulas.size(); law++) {
			laws.add(encoding.law(law));
		}
		List<Integer> literals = bench.all(encoding);
		List<Reading> readings = new ArrayList<>();
		TreeSet<String> titles = new TreeSet<>();
		Optional<List<Integer>> broken = Minimal.conflict(encoding.solver, literals, laws);
		Optional<List<Integer>> core = broken.flatMap(few -> Minimal.conflict(encoding.solver, few, literals));
		for (int i = 0; i < literals.size(); i++) {
			if (core.isEmpty() || core.get().contains(literals.get(i))) {
				readings.add(bench.readings().get(i));
			}
		}
		for (int law = 0; law < laws.size(); law++) {
			if (broken.isPresent() && broken.get().contains(laws.get(law))) {
				titles.add(program.laws.get(program.lawFormulas.get(law).number()).title());
			}
		}
		String message = titles.isEmpty() ? "No vehicle shows these findings together."
				: "No vehicle shows this: the laws forbid it.";
		return new Clash(message, readings, List.copyOf(titles));
	}
}
