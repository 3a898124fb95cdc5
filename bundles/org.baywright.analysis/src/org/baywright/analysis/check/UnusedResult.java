package org.baywright.analysis.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.Test;
import org.baywright.model.VerifyStep;
import org.baywright.model.words.Limits;

/** Results of a test that no rule which can fire ever uses. A condition that takes every result uses none. */
@RuleCheck(id = "unused-result", severity = Severity.WARNING, summary = "A test can give a result that no rule uses")
public final class UnusedResult implements Check {

	@Override
	public void report(Checked checked) {
		Set<String> dead = new HashSet<>();
		OfRules<DeadRule.Dead> deadRules = new OfRules<>();
		checked.each(Checks.get(DeadRule.class), (part, deads) -> deads.stream().filter(DeadRule.Dead::whole)
				.forEach(fact -> deadRules.add(fact.rule(), part, fact)));
		deadRules.each(checked, (rule, facts) -> dead.add(rule));
		Map<String, IndexSet> used = new HashMap<>();
		Map<String, IndexSet> told = new HashMap<>();
		checked.eachRule("results used", rule -> used(checked, rule), (rule, own) -> {
			// what lies between the bands of a rule is told with that rule
			IndexSet between = BandGap.between(checked, rule);
			if (!between.isEmpty()) {
				told.merge(rule.test().orElseThrow(), between, IndexSet::union);
			}
			if (!dead.contains(rule.name())) {
				own.forEach((test, values) -> used.merge(test, values, IndexSet::union));
			}
		});
		Set<String> needed = new HashSet<>();
		checked.base().repairs().forEach(repair -> repair.verify().forEach(step -> {
			if (step instanceof VerifyStep.Repeat repeat) {
				needed.add(repeat.test());
			}
		}));
		checked.base().tests().stream().filter(test -> used.containsKey(test.name())).forEach(test -> test.seenWith().ifPresent(needed::add));
		for (Test test : checked.base().tests()) {
			if (!used.containsKey(test.name()) && needed.contains(test.name())) {
				// what a verification needs, or what has to be done to see another result, is not to be taken out
				continue;
			}
			report(checked, test, used.getOrDefault(test.name(), IndexSet.EMPTY), told.getOrDefault(test.name(), IndexSet.EMPTY));
		}
	}

	private void report(Checked checked, Test test, IndexSet used, IndexSet told) {
		IndexSet unused = used.union(told).complement(test.domain().size());
		if (!unused.isEmpty() && !HeldBack.in(checked).uses(test.name())) {
			checked.flaw(this, test.name(), test.span())
					.says(used.isEmpty() ? "No rule uses test " + test.name() + "; write a rule for it, or take it out."
							: "No rule uses the result " + Limits.say(unused, test.domain()) + " of test " + test.name()
									+ "; say what it proves, or that it proves nothing.")
					.about(test.name() + unused).add();
		}
	}

	private static Map<String, IndexSet> used(Checked checked, Rule rule) {
		Map<String, IndexSet> used = new HashMap<>();
		if (!checked.reach(rule).isEmpty()) {
			rule.given().forEach(given -> given.eachAtom(true, (atom, asItStands) -> collect(checked, atom, asItStands, used)));
			rule.test().flatMap(checked.base()::test).ifPresent(test -> rule.outcomes().forEach(outcome -> outcome.values()
					.ifPresent(values -> used.merge(test.name(), values.in(test.domain()), IndexSet::union))));
		}
		return used;
	}

	/** A condition that takes every named result uses none; an outcome that does says what each of them proves. */
	private static void collect(Checked checked, Condition.Atom atom, boolean asItStands, Map<String, IndexSet> used) {
		if (atom instanceof Condition.TestIs is) {
			checked.base().test(is.test()).ifPresent(test -> {
				IndexSet named = is.values().in(test.domain());
				IndexSet values = asItStands ? named : named.complement(test.domain().size());
				boolean tellsNothing = test.domain() instanceof Domain.Names && values.equals(IndexSet.all(test.domain()))
						&& test.domain().size() > 1;
				if (!tellsNothing) {
					used.merge(test.name(), values, IndexSet::union);
				}
			});
		}
	}
}
