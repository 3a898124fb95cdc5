package org.baywright.presenter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Condition;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/**
 * Some rules of a project.
 *
 * @param family only rules that reach this vehicle family; nothing for all rules
 * @param around what they have to do with
 */
public record RuleScope(Optional<String> family, Around around) {

	/** What rules have to do with. */
	public sealed interface Around {

		/** Everything. */
		record All() implements Around {
		}

		/** Rules that ask for the sign, and those that wait for what such rules say. */
		record OneSign(String sign) implements Around {
		}

		/** The rule, those whose verdicts it waits for and those that wait for its own. */
		record OneRule(String rule) implements Around {
		}

		/** Rules that say something about the fault, and those that wait for that. */
		record OneFault(String fault) implements Around {
		}
	}

	/** Returns all rules of a project. */
	public static RuleScope all() {
		return new RuleScope(Optional.empty(), new Around.All());
	}

	/** Returns all rules that reach a family. */
	public static RuleScope family(String family) {
		return new RuleScope(Optional.of(family), new Around.All());
	}

	/** Returns the same family with another choice of rules. */
	public RuleScope around(Around other) {
		return new RuleScope(family, other);
	}

	/** Returns the rules, by name. */
	public List<Rule> rules(RuleBase base) {
		List<Rule> reached = base.rules().stream()
				.filter(rule -> family.isEmpty() || base.reach(rule.scope()).contains(family.get()))
				.sorted(Comparator.comparing(Rule::name)).toList();
		if (around instanceof Around.OneSign one) {
			return following(reached, rule -> asksFor(rule, one.sign()));
		} else if (around instanceof Around.OneFault one) {
			return reached.stream().filter(rule -> concerns(rule, one.fault())).toList();
		} else if (around instanceof Around.OneRule one) {
			return neighbours(reached, one.rule());
		}
		return reached;
	}

	private static List<Rule> following(List<Rule> rules, Predicate<Rule> first) {
		Set<Verdict> said = new HashSet<>();
		Set<Rule> found = new HashSet<>();
		boolean changed = true;
		while (changed) {
			changed = false;
			for (Rule rule : rules) {
				if (!found.contains(rule) && (first.test(rule) || awaited(rule).stream().anyMatch(said::contains))) {
					found.add(rule);
					said.addAll(says(rule));
					changed = true;
				}
			}
		}
		return rules.stream().filter(found::contains).toList();
	}

	private static boolean concerns(Rule rule, String fault) {
		return says(rule).stream().anyMatch(verdict -> !verdict.isReferral() && verdict.fault().equals(fault))
				|| awaited(rule).stream().anyMatch(verdict -> verdict.fault().equals(fault));
	}

	private static List<Rule> neighbours(List<Rule> rules, String name) {
		Optional<Rule> centre = rules.stream().filter(rule -> rule.name().equals(name)).findFirst();
		if (centre.isEmpty()) {
			return List.of();
		}
		Set<Verdict> needs = awaited(centre.get());
		Set<Verdict> says = says(centre.get());
		return rules.stream().filter(rule -> rule == centre.get() || says(rule).stream().anyMatch(needs::contains)
				|| awaited(rule).stream().anyMatch(says::contains)).toList();
	}

	/** Returns the conditions of a rule that are not made of others, without those on traits, in the order of its text. */
	public static List<Condition.Atom> atoms(Rule rule) {
		List<Condition.Atom> atoms = new ArrayList<>();
		rule.given().forEach(given -> given.eachAtom(atoms::add));
		return atoms;
	}

	private static boolean asksFor(Rule rule, String sign) {
		return atoms(rule).stream().map(Variable::of).anyMatch(Optional.of(new Variable(Variable.Kind.SIGN, sign))::equals);
	}

	/** Returns the verdicts that a rule looks at, to stand or not to stand. */
	public static Set<Verdict> awaited(Rule rule) {
		Set<Verdict> verdicts = new HashSet<>();
		for (Condition.Atom atom : atoms(rule)) {
			if (atom instanceof Condition.VerdictIs is) {
				verdicts.add(new Verdict(is.fault(), is.verdict()));
			}
		}
		return verdicts;
	}

	/** Returns the verdicts that a rule can say. */
	public static Set<Verdict> says(Rule rule) {
		Set<Verdict> verdicts = new HashSet<>();
		for (Outcome outcome : rule.outcomes()) {
			outcome.conclusions().forEach(said -> Verdict.of(said).ifPresent(verdicts::add));
		}
		return verdicts;
	}
}
