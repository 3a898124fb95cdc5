package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;

import org.baywright.model.Exclusive;
import org.baywright.model.Law;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/**
 * Rules of one family that belong together, not yet made ready.
 *
 * @param family the vehicle family
 * @param rules rules, sorted by name
 * @param laws laws that concern them
 * @param exclusives groups of exclusive faults that concern them
 * @param limits what laws of other parts say about traits
 */
public record Draft(String family, List<Rule> rules, List<Law> laws, List<List<String>> exclusives,
		List<Limit> limits) {

	public Draft(String family, List<Rule> rules, List<Law> laws, List<List<String>> exclusives) {
		this(family, rules, laws, exclusives, new ArrayList<>());
	}

	/** Returns all rules and laws that reach a vehicle family, in the order of the files. */
	public static Draft of(RuleBase base, String family) {
		return new Draft(family, base.rules().stream().filter(rule -> base.reach(rule.scope()).contains(family)).toList(),
				base.laws().stream().filter(law -> base.reaches(law.families(), family)).toList(),
				base.exclusives().stream().map(Exclusive::faults).toList());
	}

	/** Makes the rules ready for proofs. */
	public Program program(RuleBase base) {
		return new ProgramBuilder(base, family, rules, laws, exclusives).limits(limits).build();
	}
}
