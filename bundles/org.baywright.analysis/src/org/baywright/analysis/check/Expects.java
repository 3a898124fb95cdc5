package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Variable;
import org.baywright.analysis.proof.CodeValues;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Program;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.VerifyStep;

/**
 * What one step expects.
 *
 * @param step the step
 * @param variable the test, the code or the sign
 * @param domain the results of the test; none for a code or a sign
 * @param values numbers of the values with which the step passes
 */
record Expects(VerifyStep step, Variable variable, Optional<Domain> domain, IndexSet values) {

	static Expects of(RuleBase base, VerifyStep step) {
		if (step instanceof VerifyStep.ExpectSign sign) {
			return new Expects(step, new Variable(Variable.Kind.SIGN, sign.sign()), Optional.empty(),
					Encoding.only(sign.present() ? Variable.PRESENT : Variable.ABSENT));
		} else if (step instanceof VerifyStep.Expect code) {
			return new Expects(step, new Variable(Variable.Kind.CODE, code.code()), Optional.empty(),
					CodeValues.of(code.present() ? CodeReading.PRESENT : CodeReading.ABSENT, true));
		}
		VerifyStep.Repeat repeat = (VerifyStep.Repeat) step;
		Domain domain = base.test(repeat.test()).map(Test::domain).orElseThrow();
		return new Expects(step, new Variable(Variable.Kind.TEST, repeat.test()), Optional.of(domain),
				repeat.values().orElseThrow().in(domain));
	}

	/** Returns whether a step expects something by itself, so that it can fail. */
	static boolean isOne(VerifyStep step) {
		return step.match(
				(VerifyStep.Clear clear) -> false,
				(VerifyStep.Cycle cycle) -> false,
				(VerifyStep.Put put) -> false,
				(VerifyStep.Read read) -> false,
				(VerifyStep.Expect expect) -> true,
				(VerifyStep.ExpectSign expect) -> true,
				(VerifyStep.Prepare prepare) -> false,
				(VerifyStep.Repeat repeat) -> repeat.values().isPresent(),
				(VerifyStep.RepeatWhatConfirmed repeat) -> false);
	}

	/** Returns the cells of the program in which some value does not pass. */
	IndexSet failing(Program program, int var) {
		IndexSet failing = IndexSet.EMPTY;
		for (int cell = 0; cell < program.cells.get(var).count(); cell++) {
			IndexSet all = program.cells.get(var).values(Encoding.only(cell));
			if (!all.equals(all.intersect(values))) {
				failing = failing.union(Encoding.only(cell));
			}
		}
		return failing;
	}

	/** Returns the cells of the program in which some value passes: no rule tells the values of one cell apart. */
	List<Integer> cells(Program program, int var) {
		List<Integer> cells = new ArrayList<>();
		for (int cell = 0; cell < program.cells.get(var).count(); cell++) {
			if (values.meets(program.cells.get(var).values(Encoding.only(cell)))) {
				cells.add(cell);
			}
		}
		return cells;
	}
}
