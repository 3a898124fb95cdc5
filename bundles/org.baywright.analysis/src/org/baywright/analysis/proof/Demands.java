package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.baywright.analysis.Demand;
import org.baywright.model.Condition;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.ValueSet;

/** Takes a rule apart into what must hold for it to fire. */
final class Demands {

	private Demands() {
	}

	/** Returns what must hold, in the order of the text: traits, what is given, the test. */
	static List<Demand> of(Rule rule) {
		List<Demand> demands = new ArrayList<>();
		rule.scope().where().ifPresent(where -> add(where, demands));
		rule.given().forEach(given -> add(given, demands));
		rule.test().ifPresent(test -> {
			List<ValueSet> results = rule.outcomes().stream().map(Outcome::values).map(values -> values.orElse(null))
					.filter(Objects::nonNull).toList();
			demands.add(new Demand(new Condition.TestIs(test, new ValueSet.Union(results), rule.testSpan()), true));
		});
		return demands;
	}

	private static void add(Condition condition, List<Demand> into) {
		if (condition instanceof Condition.And and) {
			and.parts().forEach(part -> add(part, into));
		} else {
			into.add(new Demand(condition, false));
		}
	}
}
