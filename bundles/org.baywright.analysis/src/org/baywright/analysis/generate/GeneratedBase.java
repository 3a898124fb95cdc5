package org.baywright.analysis.generate;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;

import org.baywright.model.Condition;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/**
 * A generated rule base.
 *
 * @param rules the rule base
 * @param seeded ids of the flaws that were put in; there are no others
 */
public record GeneratedBase(RuleBase rules, SortedSet<String> seeded) {

	/**
	 * Returns the rule base after one edit, as an editor would make it: one rule asks for one more sign; all else is
	 * the same, object by object.
	 *
	 * @param number number of the rule to edit
	 */
	public RuleBase edited(int number) {
		Rule old = rules.rules().get(number);
		List<Condition> given = new ArrayList<>(old.given());
		given.add(new Condition.SignIs(rules.signs().get(0).name(), true, old.span()));
		RuleBase.Builder builder = new RuleBase.Builder(rules.name()).add(rules);
		builder.rules.set(number, new Rule(old.name(), old.title(), old.scope(), given, old.states(), old.test(),
				old.outcomes(), old.provenance(), old.testSpan(), old.span()));
		return builder.build();
	}
}
