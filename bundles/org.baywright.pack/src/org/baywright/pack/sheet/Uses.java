package org.baywright.pack.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.baywright.model.Condition;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/** Which rules ask for a sign, test, code or module, or build on a verdict. */
final class Uses {

	private Uses() {
	}

	/** Returns the rules by the name of what they ask for. */
	static Map<String, List<Rule>> of(RuleBase base) {
		Map<String, List<Rule>> uses = new HashMap<>();
		for (Rule rule : base.rules()) {
			Set<String> names = new LinkedHashSet<>();
			rule.test().ifPresent(names::add);
			rule.given().forEach(given -> given.eachAtom(atom -> collect(atom, names)));
			names.forEach(name -> uses.computeIfAbsent(name, key -> new ArrayList<>()).add(rule));
		}
		return uses;
	}

	private static void collect(Condition condition, Set<String> into) {
		if (condition instanceof Condition.SignIs is) {
			into.add(is.sign());
		} else if (condition instanceof Condition.TestIs is) {
			into.add(is.test());
		} else if (condition instanceof Condition.CodeIs is) {
			into.add(is.code());
		} else if (condition instanceof Condition.ModuleIs is) {
			into.add(is.module());
		} else if (condition instanceof Condition.VerdictIs is) {
			into.add(is.fault());
		} else if (condition instanceof Condition.Unexplained is) {
			into.add(is.sign());
		}
	}
}
