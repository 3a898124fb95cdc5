package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.baywright.analysis.Consultation.Clash;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/** What is known of one vehicle, reading by reading, as cells and as assumptions of a solver. */
final class Bench {

	private final Program program;
	private final Encoding encoding;
	private final VehicleRun run;
	private final List<Integer> literals = new ArrayList<>();

	Bench(RuleBase base, Program program, Encoding encoding) {
		this.program = program;
		this.encoding = encoding;
		run = new VehicleRun(base, program);
	}

	/** Notes readings in their order; returns those that cannot be, alone or beside an earlier one; they are left out. */
	List<Clash> note(List<Reading> all) {
		List<Clash> clashes = new ArrayList<>();
		for (Reading reading : all) {
			Optional<VehicleRun.Refused> refused = run.take(reading);
			if (refused.isPresent()) {
				clashes.add(refused.get().earlier().map(earlier -> new Clash("These two cannot both be so.", List.of(earlier, reading), List.of()))
						.orElseGet(() -> new Clash(upper(refused.get().message()), List.of(reading), List.of())));
			}
		}
		run.cells().forEach(cells -> literals.add(literal(encoding, cells)));
		return clashes;
	}

	private static String upper(String sentence) {
		return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
	}

	/** Returns a literal for "somebody made this reading"; one that no rule looks at always holds. */
	private int literal(Encoding in, int[] known) {
		List<Integer> parts = new ArrayList<>();
		for (int var = 0; var < known.length; var++) {
			if (known[var] != Program.OPEN) {
				parts.add(in.values.knownIn(var, program.meant(var, known[var])));
			}
		}
		return Gates.and(in.solver, parts);
	}

	/** Returns the vehicle's way through the rules. */
	VehicleRun run() {
		return run;
	}

	/** Returns all readings as literals, in their order. */
	List<Integer> all() {
		return literals;
	}

	/** Returns all readings as literals of another encoding of the same program. */
	List<Integer> all(Encoding other) {
		return run.cells().stream().map(cells -> literal(other, cells)).toList();
	}

	List<Reading> readings() {
		return run.readings();
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
				.map(core -> core.stream().map(literal -> readings().get(literals.indexOf(literal))).toList());
	}
}
