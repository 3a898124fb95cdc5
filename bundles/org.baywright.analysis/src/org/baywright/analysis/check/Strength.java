package org.baywright.analysis.check;

import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;

/**
 * How strong the evidence of a branch is: one for a test, and the strongest verdict it builds on on top of that. Signs
 * and codes alone have strength 0.
 */
final class Strength {

	private final Program program;
	private final Integer[] known;

	Strength(Program program) {
		this.program = program;
		known = new Integer[program.branches.size()];
	}

	int of(int branch) {
		if (known[branch] == null) {
			known[branch] = 0; // a loop adds nothing
			int own = program.rules.get(program.branches.get(branch).rule()).test().isPresent() ? 1 : 0;
			known[branch] = own + of(program.branches.get(branch).body());
		}
		return known[branch];
	}

	private int of(Formula formula) {
		int most = 0;
		if (formula instanceof Formula.Stands stands && stands.stands()) {
			for (int b : program.derivedBy.get(stands.verdict())) {
				most = Math.max(most, of(b));
			}
		} else if (formula instanceof Formula.All all) {
			for (Formula part : all.parts()) {
				most = Math.max(most, of(part));
			}
		} else if (formula instanceof Formula.Any any) {
			for (Formula part : any.parts()) {
				most = Math.max(most, of(part));
			}
		}
		return most;
	}
}
