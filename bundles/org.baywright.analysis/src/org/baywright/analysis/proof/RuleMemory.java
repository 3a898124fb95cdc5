package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.Variable;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/** Remembers what is known of single rules, so that an edit of one costs little among many. */
final class RuleMemory {

	private Map<Rule, RuleFacts> byRule = new IdentityHashMap<>();
	private List<RuleFacts> inOrder = List.of();
	private RuleBase last;

	/** Takes up a rule base. */
	void learn(RuleBase base) {
		boolean sameWorld = last != null && World.isSame(last, base);
		boolean sameFamilies = last != null && last.families().equals(base.families());
		Map<Variable, Key> described = new HashMap<>();
		List<RuleFacts> next = new ArrayList<>(base.rules().size());
		List<Integer> moved = new ArrayList<>();
		for (int i = 0; i < base.rules().size(); i++) {
			Rule rule = base.rules().get(i);
			boolean stayed = i < inOrder.size() && inOrder.get(i).rule == rule;
			RuleFacts facts = stayed ? inOrder.get(i) : byRule.get(rule);
			if (facts == null) {
				facts = new RuleFacts(rule);
			}
			if (!stayed) {
				moved.add(i);
			}
			if (facts.key == null || !sameWorld) {
				facts.key = bind(base, facts.print, described);
				facts.isQuiet = false;
			}
			if (facts.reach == null || !sameFamilies) {
				facts.reach = base.reach(rule.scope());
			}
			next.add(facts);
		}
		if (inOrder.size() == next.size()) {
			moved.forEach(i -> byRule.remove(inOrder.get(i).rule));
			moved.forEach(i -> byRule.put(next.get(i).rule, next.get(i)));
		} else {
			byRule = new IdentityHashMap<>(next.size() * 2);
			next.forEach(facts -> byRule.put(facts.rule, facts));
		}
		inOrder = next;
		last = base;
	}

	private static Key bind(RuleBase base, Footprint print, Map<Variable, Key> described) {
		List<Key> parts = new ArrayList<>(print.findings().size() + 1);
		parts.add(Key.of(print.text()));
		for (Variable finding : print.findings()) {
			parts.add(described.computeIfAbsent(finding, variable -> Key.of(World.describe(base, variable))));
		}
		return Key.sequence(parts, "");
	}

	/** Returns the rules in the order of the rule base. */
	List<RuleFacts> rules() {
		return inOrder;
	}

	RuleFacts of(Rule rule) {
		return byRule.get(rule);
	}
}
