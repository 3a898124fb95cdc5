package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.model.Conclusion;
import org.baywright.model.Outcome;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;

/** Which rules can confirm which faults. */
final class Confirming {

	private Confirming() {
	}

	/** Returns the faults that some situation confirms. */
	static Set<String> faults(Checked checked) {
		return checked.shared("confirmable faults", () -> findFaults(checked));
	}

	private static Set<String> findFaults(Checked checked) {
		Map<String, Set<Component>> never = new HashMap<>();
		checked.each(Checks.get(UnreachableConclusion.class), (part, found) -> found.stream()
				.map(UnreachableConclusion.Never::verdict).filter(verdict -> verdict.kind() == VerdictKind.CONFIRMED)
				.map(Verdict::fault).forEach(fault -> never.computeIfAbsent(fault, key -> new HashSet<>()).add(part)));
		Set<String> faults = new HashSet<>();
		for (Rule rule : checked.base().rules()) {
			for (Outcome outcome : rule.outcomes()) {
				for (Conclusion said : outcome.conclusions()) {
					if (said instanceof Conclusion.OnFault on && on.verdict() == VerdictKind.CONFIRMED
							&& !faults.contains(on.fault()) && isReached(checked, rule, never.get(on.fault()))) {
						faults.add(on.fault());
					}
				}
			}
		}
		return faults;
	}

	private static boolean isReached(Checked checked, Rule rule, Set<Component> never) {
		if (never == null) {
			return !checked.reach(rule).isEmpty();
		}
		return checked.partsOf(rule.name()).stream().anyMatch(part -> !never.contains(part));
	}

	/** Returns the rules that can confirm a fault on vehicles of some family that a repair is for. */
	static List<Rule> rules(Checked checked, Repair repair, String fault) {
		return checked.shared("confirming rules", () -> findRules(checked)).getOrDefault(fault, List.of()).stream()
				.filter(rule -> checked.reach(rule).stream().anyMatch(family -> checked.base().reaches(repair.scope(), family))).toList();
	}

	private static Map<String, List<Rule>> findRules(Checked checked) {
		Map<String, List<DeadRule.Dead>> dead = new HashMap<>();
		checked.each(Checks.get(DeadRule.class), (part, deads) -> deads
				.forEach(fact -> dead.computeIfAbsent(fact.rule(), key -> new ArrayList<>()).add(fact)));
		Map<String, List<Rule>> rules = new HashMap<>();
		for (Rule rule : checked.base().rules()) {
			Set<String> own = new HashSet<>();
			List<DeadRule.Dead> facts = dead.getOrDefault(rule.name(), List.of());
			for (int i = 0; i < rule.outcomes().size(); i++) {
				int number = i;
				boolean live = facts.stream().filter(fact -> fact.outcomes().contains(number)).count() < checked
						.partsOf(rule.name()).size();
				for (Conclusion said : rule.outcomes().get(i).conclusions()) {
					if (live && said instanceof Conclusion.OnFault on && on.verdict() == VerdictKind.CONFIRMED
							&& own.add(on.fault())) {
						rules.computeIfAbsent(on.fault(), key -> new ArrayList<>()).add(rule);
					}
				}
			}
		}
		return rules;
	}
}
