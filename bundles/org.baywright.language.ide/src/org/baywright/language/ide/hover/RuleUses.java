package org.baywright.language.ide.hover;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.baywright.analysis.Variable;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/**
 * Which rules and repairs have to do with what.
 *
 * @param byFinding rules that run a test or ask for a test, sign, code or module, by its name
 * @param byVerdict rules that come to a verdict on a fault, by verdict and fault
 * @param repairs repairs that fix a fault, by the fault
 * @param byChain rules that follow from a chain, by its name
 */
public record RuleUses(Map<String, Set<String>> byFinding, Map<VerdictKind, Map<String, Set<String>>> byVerdict,
		Map<String, Set<String>> repairs, Map<String, Set<String>> byChain) {

	/** Returns the uses in a rule base. */
	public static RuleUses of(RuleBase base) {
		RuleUses uses = new RuleUses(new TreeMap<>(), new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
		for (Rule rule : base.rules()) {
			rule.test().ifPresent(test -> put(uses.byFinding, test, rule.name()));
			for (Condition given : rule.given()) {
				given.eachAtom(atom -> Variable.of(atom).filter(asked -> asked.kind() != Variable.Kind.TRAIT)
						.ifPresent(asked -> put(uses.byFinding, asked.name(), rule.name())));
			}
			rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(conclusion -> verdict(conclusion, rule, uses)));
		}
		base.chains().forEach(chain -> chain.rules().forEach(rule -> put(uses.byChain, chain.name(), rule.name())));
		for (Repair repair : base.repairs()) {
			repair.fixes().forEach(fault -> put(uses.repairs, fault, repair.name()));
		}
		return uses;
	}

	private static void verdict(Conclusion conclusion, Rule rule, RuleUses uses) {
		if (conclusion instanceof Conclusion.OnFault on) {
			put(uses.byVerdict.computeIfAbsent(on.verdict(), none -> new TreeMap<>()), on.fault(), rule.name());
		}
	}

	private static void put(Map<String, Set<String>> map, String key, String value) {
		map.computeIfAbsent(key, none -> new TreeSet<>()).add(value);
	}

	/** Returns the rules that come to a verdict on a fault. */
	public Collection<String> rules(VerdictKind verdict, String fault) {
		return byVerdict.getOrDefault(verdict, Map.of()).getOrDefault(fault, Set.of());
	}

	/** Returns the rules that have to do with a finding. */
	public Collection<String> rules(String finding) {
		return byFinding.getOrDefault(finding, Set.of());
	}

	/** Returns the repairs that fix a fault. */
	public List<String> repairs(String fault) {
		return List.copyOf(repairs.getOrDefault(fault, Set.of()));
	}

	/** Returns the rules that a name stands for: the rule itself, or those that follow from a chain. */
	public Collection<String> madeOf(String name) {
		return byChain.getOrDefault(name, Set.of(name));
	}
}
