package org.baywright.analysis.proof;

import org.baywright.analysis.Verdict;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;

/** Which faults answer a sign: those that a rule can confirm that asks for the sign, itself or by a chain. */
final class Answering {

	private Answering() {
	}

	static Map<String, Set<String>> faultsBySign(List<Rule> rules) {
		Map<String, Set<String>> bySign = new HashMap<>();
		Set<String> asked = new TreeSet<>();
		rules.forEach(rule -> rule.given().forEach(given -> given.eachAtom(atom -> collect(atom, asked))));
		for (String sign : asked) {
			bySign.put(sign, faultsOf(sign, rules));
		}
		return bySign;
	}

	/** Collects the signs that conditions call unexplained. */
	private static void collect(Condition.Atom atom, Set<String> unexplained) {
		if (atom instanceof Condition.Unexplained is) {
			unexplained.add(is.sign());
		}
	}

	private static Set<String> faultsOf(String sign, List<Rule> rules) {
		Set<Verdict> reached = new HashSet<>();
		Set<String> faults = new TreeSet<>();
		boolean changed = true;
		while (changed) {
			changed = false;
			for (Rule rule : rules) {
				if (asks(rule, sign, reached)) {
					for (Outcome outcome : rule.outcomes()) {
						for (Conclusion conclusion : outcome.conclusions()) {
							if (conclusion instanceof Conclusion.OnFault on
									&& reached.add(new Verdict(on.fault(), on.verdict()))) {
								changed = true;
								if (on.verdict() == VerdictKind.CONFIRMED) {
									faults.add(on.fault());
								}
							}
						}
					}
				}
			}
		}
		return faults;
	}

	private static boolean asks(Rule rule, String sign, Set<Verdict> reached) {
		Set<String> present = new HashSet<>();
		Set<String> unexplained = new HashSet<>();
		Set<Verdict> looksAt = new HashSet<>();
		for (Condition given : rule.given()) {
			// "not absent" is present, and "not present" is absent
			given.eachAtom(true, (atom, asItStands) -> {
				if (atom instanceof Condition.SignIs is && is.present() == asItStands) {
					present.add(is.sign());
				}
				collect(atom, unexplained);
			});
			ProgramBuilder.collectVerdicts(given, looksAt);
		}
		return !unexplained.contains(sign)
				&& (present.contains(sign) || looksAt.stream().anyMatch(reached::contains));
	}
}
