package org.baywright.analysis.check;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Severity;

/** A review that is dated before the rule. */
@RuleCheck(id = "review-before-rule", severity = Severity.WARNING, signOff = true, summary = "A review is dated before the rule was written")
public final class ReviewBeforeRule implements Check {

	@Override
	public void report(Checked checked) {
		for (Agreement rule : Peers.all(checked)) {
			// a review of another meaning is stale, whatever its date
			rule.reviews().stream().filter(review -> rule.isFresh(review) && rule.isBefore(review))
					.forEach(review -> checked.flaw(this, Peers.id(review), review.span())
							.says("The review of " + Peers.named(checked, rule) + " by " + (review.reviewer().isBlank() ? "somebody" : review.reviewer())
									+ " is of " + review.date() + ", before the rule was written on " + rule.provenance().date().orElseThrow()
									+ (review.agrees() ? "; it does not count." : "; one of the two dates is wrong."))
							.near(rule.span(), Peers.named(checked, rule)).about(review.meaning() + review.date() + rule.provenance().date()).add());
		}
	}
}
