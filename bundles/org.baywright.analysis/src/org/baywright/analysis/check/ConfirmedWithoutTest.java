package org.baywright.analysis.check;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.EachRule;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;

/** A rule that confirms a fault on signs and codes alone, without any test. */
@RuleCheck(id = "confirmed-without-test", severity = Severity.WARNING, summary = "A rule confirms a fault without a test")
public final class ConfirmedWithoutTest implements EachRule {

	@Override
	public void report(Checked checked, Rule rule) {
		if (rule.test().isEmpty() && rule.given().stream().noneMatch(ConfirmedWithoutTest::hasTest)) {
			for (Outcome outcome : rule.outcomes()) {
				for (Conclusion said : outcome.conclusions()) {
					if (said instanceof Conclusion.OnFault on && on.verdict() == VerdictKind.CONFIRMED) {
						checked.finding(this, rule.name() + "/" + on.fault(), on.span())
								.says("Rule " + rule.name() + " confirms " + ClashReport.say(checked, on.fault())
										+ " without a test; add the test that proves it, or let the rule suspect it.")
								.about(rule).add();
					}
				}
			}
		}
	}

	private static boolean hasTest(Condition condition) {
		if (condition instanceof Condition.And and) {
			return and.parts().stream().anyMatch(ConfirmedWithoutTest::hasTest);
		} else if (condition instanceof Condition.Or or) {
			return !or.parts().isEmpty() && or.parts().stream().allMatch(ConfirmedWithoutTest::hasTest);
		} else if (condition instanceof Condition.Not not) {
			return hasTest(not.part());
		}
		return condition instanceof Condition.TestIs;
	}
}
