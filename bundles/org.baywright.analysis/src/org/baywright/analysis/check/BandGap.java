package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.EachRule;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.Test;
import org.baywright.model.words.Limits;

/** Values that lie between two bands of a rule, or beyond the range at which one ends, and belong to none. */
@RuleCheck(id = "band-gap", severity = Severity.WARNING, summary = "Measured values between the bands of a rule lead nowhere")
public final class BandGap implements EachRule {

	@Override
	public void report(Checked checked, Rule rule) {
		IndexSet between = between(checked, rule);
		if (!between.isEmpty()) {
			checked.flaw(this, rule.name(), rule.testSpan())
					.says("Rule " + rule.name() + " says nothing about "
							+ Limits.say(between, checked.base().test(rule.test().orElseThrow()).orElseThrow().domain())
							+ where(checked, rule, between) + "; extend one of them.")
					.about(rule).add();
		}
	}

	private static String where(Checked checked, Rule rule, IndexSet between) {
		Domain.Quantity quantity = (Domain.Quantity) checked.base().test(rule.test().orElseThrow()).orElseThrow().domain();
		boolean beyond = between.runCount() == 1 && between.first() == between.last() && !quantity.isNumber(between.first());
		return beyond ? ", which lies beyond its bands" : ", which lies between its bands";
	}

	/** Returns the measured values between the bands of a rule. */
	static IndexSet between(Checked checked, Rule rule) {
		return rule.test().flatMap(checked.base()::test).map(Test::domain).filter(Domain.Quantity.class::isInstance)
				.filter(domain -> rule.outcomes().size() > 1).map(domain -> between(rule.outcomes(), domain)).orElse(IndexSet.EMPTY);
	}

	private static IndexSet between(List<Outcome> outcomes, Domain domain) {
		IndexSet covered = IndexSet.EMPTY;
		for (Outcome outcome : outcomes) {
			covered = covered.union(outcome.values().map(values -> values.in(domain)).orElse(IndexSet.EMPTY));
		}
		if (covered.isEmpty()) {
			return covered;
		}
		// who takes the greatest number has not said that the instrument may show more
		Domain.Quantity quantity = (Domain.Quantity) domain;
		int first = covered.first() == quantity.first() ? 0 : covered.first();
		int last = covered.last() == quantity.last() ? quantity.size() - 1 : covered.last();
		return covered.complement(domain.size()).intersect(IndexSet.range(first, last));
	}
}
