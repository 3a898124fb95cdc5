package org.baywright.language.ide.hover;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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
 */
public record RuleUses(Map<String, Set<String>> byFinding, Map<VerdictKind, Map<String, Set<String>>> byVerdict,
		Map<String, Set<String>> repairs) {

	/** Returns the uses in a rule base. */
	public static RuleUses of(RuleBase base) {
		RuleUses uses = new RuleUses(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
		for (Rule rule : base.rules()) {
			rule.test().ifPresent(test -> put(uses.byFinding, test, rule.name()));
			for (Condition given : rule.given()) {
				given.eachAtom(atom -> finding(atom, rule, uses));
			}
			rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(conclusion -> verdict(conclusion, rule, uses)));
		}
		for (Repair repair : base.repairs()) {
			repair.fixes().forEach(fault -> put(uses.repairs, fault, repair.name()));
		}
		return uses;
	}

	private static void finding(Condition atom, Rule rule, RuleUses uses) {
		if (atom instanceof Condition.SignIs is) {
			put(uses.byFinding, is.sign(), rule.name());
		} else if (atom instanceof Condition.Unexplained is) {
			put(uses.byFinding, is.sign(), rule.name());
		} else if (atom instanceof Condition.TestIs is) {
			put(uses.byFinding, is.test(), rule.name());
		} else if (atom instanceof Condition.CodeIs is) {
			put(uses.byFinding, is.code(), rule.name());
		} else if (atom instanceof Condition.ModuleIs is) {
			put(uses.byFinding, is.module(), rule.name());
		}
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
}
