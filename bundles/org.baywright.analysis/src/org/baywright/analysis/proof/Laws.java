package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;

import org.baywright.analysis.Consultation.Clash;
import org.baywright.model.Law;
import org.baywright.model.Reading;

/** Finds out which laws some findings break, or what a vehicle is like. */
final class Laws {

	private final Program program;
	private final Encoding encoding;
	/** For each law in turn one for "the vehicle obeys the law". */
	private final List<Integer> literals;

	Laws(Program program, int conflictLimit) {
		this.program = program;
		encoding = Encoding.lawless(program, conflictLimit);
		literals = IntStream.range(0, program.lawFormulas.size()).mapToObj(encoding::law).toList();
	}

	private List<Law> of(List<Integer> some) {
		return IntStream.range(0, literals.size()).filter(law -> some.contains(literals.get(law)))
				.mapToObj(law -> program.laws.get(program.lawFormulas.get(law).number())).toList();
	}

	/**
	 * Returns the laws that, as few as can be, no vehicle with these cells obeys; all laws if there is no clash or the
	 * limit was reached on the way.
	 *
	 * @param vars variables of the program
	 * @param cells the cell of each
	 */
	List<Law> against(List<Integer> vars, int[] cells) {
		List<Integer> vehicle = IntStream.range(0, cells.length)
				.mapToObj(i -> encoding.values.in(vars.get(i), program.meant(vars.get(i), cells[i]))).toList();
		return of(Minimal.conflict(encoding.solver, vehicle, literals).orElse(literals));
	}

	/** Returns the findings and laws that clash, as few as can be; all findings if the limit was reached on the way. */
	Clash clash(Bench bench) {
		List<Integer> found = bench.all(encoding);
		List<Reading> readings = new ArrayList<>();
		Optional<List<Integer>> broken = Minimal.conflict(encoding.solver, found, literals);
		Optional<List<Integer>> core = broken.flatMap(few -> Minimal.conflict(encoding.solver, few, found));
		for (int i = 0; i < found.size(); i++) {
			if (core.isEmpty() || core.get().contains(found.get(i))) {
				readings.add(bench.readings().get(i));
			}
		}
		TreeSet<String> titles = new TreeSet<>();
		of(broken.orElse(List.of())).forEach(law -> titles.add(law.title()));
		String message = titles.isEmpty() ? "No vehicle shows these findings together."
				: "No vehicle shows this: the laws forbid it.";
		return new Clash(message, readings, List.copyOf(titles));
	}
}
