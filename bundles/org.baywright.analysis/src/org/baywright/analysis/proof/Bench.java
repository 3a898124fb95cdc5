package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Consultation.Clash;
import org.baywright.analysis.Variable;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/** What is known of one vehicle, reading by reading, as cells and as assumptions of a solver. */
final class Bench {

	private final RuleBase base;
	private final Program program;
	private final Encoding encoding;
	private final Noted noted;
	private final List<Reading> readings = new ArrayList<>();
	private final List<Noted> notes = new ArrayList<>();
	private final List<Integer> literals = new ArrayList<>();

	Bench(RuleBase base, Program program, Encoding encoding) {
		this.base = base;
		this.program = program;
		this.encoding = encoding;
		noted = new Noted(base, program);
	}

	/** Notes readings in their order; returns those that cannot be, alone or beside an earlier one; they are left out. */
	List<Clash> note(List<Reading> all) {
		List<Clash> clashes = new ArrayList<>();
		for (Reading reading : all) {
			Noted alone = new Noted(base, program);
			Optional<String> wrong = alone.put(reading);
			Optional<Reading> other = wrong.isPresent() ? Optional.empty() : against(alone);
			if (wrong.isPresent()) {
				clashes.add(new Clash(upper(wrong.get()), List.of(reading), List.of()));
			} else if (other.isPresent()) {
				clashes.add(new Clash("These two cannot both be so.", List.of(other.get(), reading), List.of()));
			} else {
				noted.put(reading);
				readings.add(reading);
				notes.add(alone);
				literals.add(literal(encoding, alone.cells()));
			}
		}
		return clashes;
	}

	private static String upper(String sentence) {
		return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
	}

	/** Returns an earlier reading that says something else of the same thing. */
	private Optional<Reading> against(Noted alone) {
		for (int i = 0; i < readings.size(); i++) {
			for (Map.Entry<Variable, Integer> earlier : notes.get(i).values().entrySet()) {
				if (!earlier.getValue().equals(alone.values().getOrDefault(earlier.getKey(), earlier.getValue()))) {
					return Optional.of(readings.get(i));
				}
			}
		}
		return Optional.empty();
	}

	/** Returns a literal for "somebody made this reading"; one that no rule looks at always holds. */
	private int literal(Encoding in, int[] known) {
		List<Integer> parts = new ArrayList<>();
		for (int var = 0; var < known.length; var++) {
			if (known[var] != Program.OPEN) {
				parts.add(in.values.knownIn(var, Encoding.only(known[var])));
			}
		}
		return Gates.and(in.solver, parts);
	}

	/** Returns the cell of each variable, or {@link Program#OPEN}. */
	int[] known() {
		return noted.cells();
	}

	/** Returns all readings as literals, in their order. */
	List<Integer> all() {
		return literals;
	}

	/** Returns all readings as literals of another encoding of the same program. */
	List<Integer> all(Encoding other) {
		return notes.stream().map(note -> literal(other, note.cells())).toList();
	}

	List<Reading> readings() {
		return readings;
	}

	/** Asks whether some vehicle with all readings makes the literals hold. */
	Answer ask(int... more) {
		int[] assumptions = Arrays.copyOf(more, more.length + literals.size());
		for (int i = 0; i < literals.size(); i++) {
			assumptions[more.length + i] = literals.get(i);
		}
		return encoding.ask(assumptions);
	}

	/** Returns a smallest set of readings with which the literals cannot hold; empty if the limit was reached. */
	Optional<List<Reading>> reason(List<Integer> against) {
		return Minimal.conflict(encoding.solver, against, literals)
				.map(core -> core.stream().map(literal -> readings.get(literals.indexOf(literal))).toList());
	}
}
