package org.baywright.analysis.check;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Severity;
import org.baywright.model.SignOff;

/** A review by the author of the rule, where the sign-off does not count it. */
@RuleCheck(id = "author-agrees", severity = Severity.WARNING, signOff = true, summary = "The author of a rule agrees with it, which does not count")
public final class AuthorAgrees implements Check {

	@Override
	public void report(Checked checked) {
		for (Agreement rule : Peers.signedOff(checked)) {
			if (rule.signOff().filter(SignOff::withoutAuthor).isPresent()) {
				rule.reviews().stream().filter(review -> review.agrees() && rule.isFresh(review) && rule.isAuthor(review.reviewer()))
						.forEach(review -> checked.flaw(this, Peers.id(review), review.span())
								.says(review.reviewer() + " wrote " + Peers.named(checked, rule) + " and agrees with it; that does not count. Another person must look at it.")
								.near(rule.span(), Peers.named(checked, rule)).about(review.meaning())
								.fix(new Fix.RemoveText("Take the review out", review.span())).add());
			}
		}
	}
}
