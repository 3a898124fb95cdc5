package org.baywright.analysis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.baywright.model.Condition;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/**
 * How well a suspicion is founded: by how many pointers that are independent of each other. Two rules point as one if
 * they rest on a test or a code in common, or, for rules that rest on neither, on a sign.
 */
public final class Pointers {

	private Pointers() {
	}

	/** Returns by how many pointers a fault is suspected; 0 for any other verdict. */
	public static int of(RuleBase base, Consultation.Derived derived) {
		return derived.verdict().kind() != VerdictKind.SUSPECTED ? 0
				: count(derived.rules().stream().map(base::rule).flatMap(Optional::stream).toList());
	}

	/** Returns how many pointers these rules are; 0 if none of them rests on anything found. */
	public static int count(Collection<Rule> rules) {
		List<Set<String>> groups = new ArrayList<>();
		for (Rule rule : rules) {
			Set<String> joined = new HashSet<>(restsOn(rule));
			if (!joined.isEmpty()) {
				List<Set<String>> met = groups.stream().filter(group -> !Collections.disjoint(group, joined)).toList();
				met.forEach(joined::addAll);
				groups.removeAll(met);
				groups.add(joined);
			}
		}
		return groups.size();
	}

	/** Returns what a rule rests on: the tests and codes that it looks at, or else the signs. */
	private static Set<String> restsOn(Rule rule) {
		Set<String> strong = new HashSet<>();
		Set<String> signs = new HashSet<>();
		rule.test().ifPresent(test -> strong.add("test " + test));
		rule.given().forEach(given -> given.eachAtom(atom -> atom.visit(
				(Condition.TraitIs is) -> { },
				(Condition.SignIs is) -> signs.add("sign " + is.sign()),
				(Condition.TestIs is) -> strong.add("test " + is.test()),
				(Condition.CodeIs is) -> strong.add("code " + is.code()),
				(Condition.ModuleIs is) -> { },
				(Condition.VerdictIs is) -> { },
				(Condition.Unexplained is) -> { })));
		return strong.isEmpty() ? signs : strong;
	}
}
