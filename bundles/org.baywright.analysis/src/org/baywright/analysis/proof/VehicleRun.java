package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

import org.baywright.analysis.Variable;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/**
 * One vehicle on its way through the rules of its family: takes readings one by one, each beside those before it, and
 * tells what the rules derive. A consultation and a finished job both go this way.
 */
final class VehicleRun {

	private final RuleBase base;
	private final Program program;
	private final Noted noted;
	private final List<Reading> readings = new ArrayList<>();
	private final List<Noted> notes = new ArrayList<>();
	private Program.Derived derived;

	/**
	 * Why a reading is not taken.
	 *
	 * @param message what is wrong with it alone; empty if it is against an earlier one
	 * @param earlier the earlier reading that says something else
	 * @param about what both speak of
	 */
	record Refused(String message, Optional<Reading> earlier, Optional<Variable> about) {
	}

	VehicleRun(RuleBase base, Program program) {
		this.base = base;
		this.program = program;
		noted = new Noted(base, program);
	}

	/** Takes a reading, unless it cannot be, alone or beside an earlier one. */
	Optional<Refused> take(Reading reading) {
		Noted alone = new Noted(base, program);
		Optional<Refused> refused = alone.put(reading).map(wrong -> new Refused(wrong, Optional.empty(), Optional.empty())).or(() -> against(alone));
		if (refused.isEmpty()) {
			noted.put(reading);
			readings.add(reading);
			notes.add(alone);
			derived = null;
		}
		return refused;
	}

	/** Returns the first reading that says something else of the same thing. */
	private Optional<Refused> against(Noted alone) {
		for (int i = 0; i < readings.size(); i++) {
			for (Map.Entry<Variable, Integer> earlier : notes.get(i).values().entrySet()) {
				if (!earlier.getValue().equals(alone.values().getOrDefault(earlier.getKey(), earlier.getValue()))) {
					return Optional.of(new Refused("", Optional.of(readings.get(i)), Optional.of(earlier.getKey())));
				}
			}
		}
		return Optional.empty();
	}

	/** Returns the readings taken, in their order. */
	List<Reading> readings() {
		return readings;
	}

	/** Returns the cell of each variable, or {@link Program#OPEN}. */
	int[] known() {
		return noted.cells();
	}

	/** Returns for each reading taken the cells that it alone fills. */
	List<int[]> cells() {
		return notes.stream().map(Noted::cells).toList();
	}

	/** Returns what the rules derive from the readings taken. */
	Program.Derived derived() {
		if (derived == null) {
			derived = program.derive(known(), -1);
		}
		return derived;
	}

	/** Returns the rules of which an outcome applied, sorted. */
	List<String> applied() {
		return names(IntStream.range(0, program.branches.size()).boxed().toList());
	}

	/** Returns the rules that brought a verdict about, sorted. */
	List<String> behind(int verdict) {
		return names(program.derivedBy.get(verdict));
	}

	private List<String> names(List<Integer> branches) {
		return branches.stream().filter(b -> derived().fired()[b]).map(b -> program.rules.get(program.branches.get(b).rule()).name())
				.distinct().sorted().toList();
	}
}
