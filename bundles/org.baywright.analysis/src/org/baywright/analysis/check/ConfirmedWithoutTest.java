package org.baywright.analysis.check;

import java.util.List;

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
		if (rule.test().isEmpty() && rule.given().stream().noneMatch(given -> hasTest(given, true))) {
			rule.outcomes().forEach(outcome -> report(checked, rule, outcome));
		}
	}

	private void report(Checked checked, Rule rule, Outcome outcome) {
		List<Conclusion.OnFault> confirmed = outcome.conclusions().stream().filter(Conclusion.OnFault.class::isInstance)
				.map(Conclusion.OnFault.class::cast).filter(on -> on.verdict() == VerdictKind.CONFIRMED).toList();
		if (!confirmed.isEmpty()) {
			List<String> faults = confirmed.stream().map(Conclusion.OnFault::fault).distinct().toList();
			String it = faults.size() == 1 ? "it" : "them";
			Checked.Draftsman flaw = checked
					.flaw(this, rule.name() + "/" + String.join("+", faults), confirmed.get(0).span())
					.says("Rule " + rule.name() + " confirms " + ClashReport.say(checked, faults)
							+ " without a test; add the test that proves " + it + ", or let the rule suspect " + it + ".")
					.about(rule);
			confirmed.stream().skip(1).forEach(on -> flaw.near(on.span(), "fault " + on.fault()));
			flaw.add();
		}
	}

	/** Returns whether every way in which the condition holds, or with {@code holds} false fails, rests on a test. */
	private static boolean hasTest(Condition condition, boolean holds) {
		return condition.match(
				(Condition.And and) -> haveTest(and.parts(), holds, holds),
				(Condition.Or or) -> haveTest(or.parts(), holds, !holds),
				(Condition.Not not) -> hasTest(not.part(), !holds),
				(Condition.Atom atom) -> atom instanceof Condition.TestIs);
	}

	private static boolean haveTest(List<Condition> parts, boolean holds, boolean all) {
		return all ? parts.stream().anyMatch(part -> hasTest(part, holds))
				: !parts.isEmpty() && parts.stream().allMatch(part -> hasTest(part, holds));
	}
}
