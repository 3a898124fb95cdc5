package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Story;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.EachRule;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.Test;

/** Values that lie between two bands of a rule and belong to none of them. */
@RuleCheck(id = "band-gap", severity = Severity.WARNING, summary = "Measured values between the bands of a rule lead nowhere")
public final class BandGap implements EachRule {

	@Override
	public void report(Checked checked, Rule rule) {
		IndexSet between = between(checked, rule);
		if (!between.isEmpty()) {
			checked.finding(this, rule.name(), rule.testSpan())
					.says("Rule " + rule.name() + " says nothing about "
							+ Story.say(checked.base().test(rule.test().orElseThrow()).orElseThrow().domain(), between)
							+ ", which lies between its bands; extend one of them.")
					.about(rule).add();
		}
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
		return covered.isEmpty() ? covered
				: covered.complement(domain.size()).intersect(IndexSet.range(covered.first(), covered.last()));
	}
}
