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
	private Map<String, List<Rule>> byFamily = new HashMap<>();
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
				facts.remembered = Map.of();
			}
			if (facts.reach == null || !sameFamilies) {
				facts.reach = base.reach(rule.scope());
			}
			next.add(facts);
		}
		boolean same = sameFamilies && last.hasUniqueRuleNames() && base.hasUniqueRuleNames()
				&& inOrder.size() == next.size()
				&& moved.stream().allMatch(i -> !byRule.containsKey(next.get(i).rule)
						&& inOrder.get(i).reach.equals(next.get(i).reach));
		if (same) {
			moved.forEach(i -> replace(inOrder.get(i), next.get(i)));
		} else {
			byFamily = byFamily(base, next);
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

	/** The lists of other families stay as they are; most edits touch few. */
	private void replace(RuleFacts old, RuleFacts now) {
		for (String family : now.reach) {
			List<Rule> rules = new ArrayList<>(byFamily.get(family));
			rules.replaceAll(rule -> rule == old.rule ? now.rule : rule);
			byFamily.put(family, rules);
		}
	}

	private static Map<String, List<Rule>> byFamily(RuleBase base, List<RuleFacts> inOrder) {
		Map<String, List<Rule>> byFamily = new HashMap<>();
		base.families().forEach(family -> byFamily.put(family.name(), new ArrayList<>()));
		boolean unique = base.hasUniqueRuleNames(); // the language reports a name used twice
		for (RuleFacts facts : inOrder) {
			if (unique || base.rule(facts.rule.name()).orElse(null) == facts.rule) {
				for (String family : facts.reach) {
					byFamily.get(family).add(facts.rule);
				}
			}
		}
		return byFamily;
	}

	/** Returns a key of what a rule or law means, together with everything that it can mean by what it speaks of. */
	static Key bind(RuleBase base, Footprint print, Map<Variable, Key> described) {
		List<Key> parts = new ArrayList<>(print.findings().size() + 1);
		parts.add(Key.of(print.text()));
		for (Variable finding : print.findings()) {
			parts.add(described.computeIfAbsent(finding, variable -> Key.of(World.describe(base, variable))));
		}
		return Key.sequence(parts, "");
	}

	/** Returns the rules that reach a family, in the order of the rule base. */
	List<Rule> rulesOf(String family) {
		return byFamily.get(family);
	}

	/** Returns the rules in the order of the rule base. */
	List<RuleFacts> rules() {
		return inOrder;
	}

	RuleFacts of(Rule rule) {
		return byRule.get(rule);
	}
}
