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
			rule.given().forEach(given -> given.eachAtom(atom -> {
				if (!(atom instanceof Condition.TraitIs)) {
					names.add(atom.about());
				}
			}));
			names.forEach(name -> uses.computeIfAbsent(name, key -> new ArrayList<>()).add(rule));
		}
		return uses;
	}
}
