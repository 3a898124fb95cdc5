package org.baywright.analysis.check;

import java.util.Optional;

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

/** Two outcomes of one rule that share results. */
@RuleCheck(id = "band-overlap", severity = Severity.ERROR, summary = "The same result leads to two outcomes of one rule")
public final class BandOverlap implements EachRule {

	@Override
	public void report(Checked checked, Rule rule) {
		Optional<Domain> domain = rule.test().flatMap(checked.base()::test).map(Test::domain);
		if (domain.isPresent()) {
			for (int i = 0; i < rule.outcomes().size(); i++) {
				for (int j = i + 1; j < rule.outcomes().size(); j++) {
					compare(checked, rule, domain.get(), i, j);
				}
			}
		}
	}

	private void compare(Checked checked, Rule rule, Domain domain, int i, int j) {
		Outcome first = rule.outcomes().get(i);
		Outcome second = rule.outcomes().get(j);
		if (first.values().isPresent() && second.values().isPresent()) {
			IndexSet shared = first.values().get().in(domain).intersect(second.values().get().in(domain));
			if (!shared.isEmpty()) {
				checked.flaw(this, rule.name() + "/" + i + "/" + j, second.span())
						.says("In rule " + rule.name() + ", " + Limits.say(shared, domain) + " belongs to two outcomes: \""
								+ first.label() + "\" and \"" + second.label() + "\"; leave it to one of them.")
						.near(first.span(), "the other outcome").about(rule).add();
			}
		}
	}
}
