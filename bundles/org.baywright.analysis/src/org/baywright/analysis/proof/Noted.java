package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.analysis.Variable;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/** What is known of one vehicle, noted reading by reading, in the cells of a program. */
final class Noted {

	private final RuleBase base;
	private final Program program;
	private final int[] known;
	private final Map<Variable, Integer> values = new TreeMap<>();

	Noted(RuleBase base, Program program) {
		this.base = base;
		this.program = program;
		known = new int[program.variables.size()];
		Arrays.fill(known, Program.OPEN);
	}

	/** Returns the cell of each variable, or {@link Program#OPEN}. */
	int[] cells() {
		return known;
	}

	/** Returns the value number of each variable, also of those that no rule looks at. */
	Map<Variable, Integer> values() {
		return values;
	}

	/** Notes a reading; returns what is wrong with it, if anything. */
	Optional<String> put(Reading reading) {
		if (reading instanceof Reading.SignSeen seen) {
			set(Variable.Kind.SIGN, seen.subject(), seen.present() ? Variable.PRESENT : Variable.ABSENT);
		} else if (reading instanceof Reading.ModuleAsked asked) {
			set(Variable.Kind.MODULE, asked.subject(), asked.answers() ? Variable.ANSWERS : Variable.SILENT);
			if (!asked.answers()) {
				base.codes().stream().filter(code -> code.module().equals(asked.subject()))
						.forEach(code -> set(Variable.Kind.CODE, code.name(), Variable.UNREAD));
			}
		} else if (reading instanceof Reading.CodeRead read) {
			putCode(read.subject(), read.reading());
		} else {
			return putValue(reading);
		}
		return Optional.empty();
	}

	/** A state that no rule asks for is no more than present, or says nothing. */
	private void putCode(String code, CodeReading reading) {
		int var = program.numberOf(new Variable(Variable.Kind.CODE, code));
		boolean stateCounts = var < 0 || program.hasStates(var) || !reading.isState();
		if (stateCounts || reading != CodeReading.UNTESTED) {
			set(Variable.Kind.CODE, code, stateCounts ? reading.ordinal() : Variable.PRESENT);
		}
		base.code(code).ifPresent(found -> set(Variable.Kind.MODULE, found.module(),
				reading == CodeReading.UNREAD ? Variable.SILENT : Variable.ANSWERS));
	}

	private Optional<String> putValue(Reading reading) {
		boolean isTest = base.test(reading.subject()).isPresent();
		Variable.Kind kind = isTest ? Variable.Kind.TEST : Variable.Kind.TRAIT;
		Optional<Domain> domain = isTest ? base.test(reading.subject()).map(org.baywright.model.Test::domain)
				: Optional.ofNullable(base.traitsOf(program.family).get(reading.subject()))
						.map(org.baywright.model.Trait::domain);
		int value = domain.map(known -> known.indexOf(reading)).orElse(-1);
		if (value < 0 || value >= domain.map(Domain::size).orElse(0)) {
			return Optional.of("the value given for " + reading.subject() + " is not one that it can have.");
		}
		set(kind, reading.subject(), value);
		return Optional.empty();
	}

	/** A finding that no rule looks at has no cell. */
	private void set(Variable.Kind kind, String name, int value) {
		values.put(new Variable(kind, name), value);
		int var = program.numberOf(new Variable(kind, name));
		if (var >= 0) {
			known[var] = program.cells.get(var).of(value);
		}
	}
}
