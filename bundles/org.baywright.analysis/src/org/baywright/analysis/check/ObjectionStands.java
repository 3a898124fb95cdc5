package org.baywright.analysis.check;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Review;
import org.baywright.model.Severity;

/** A rule to which a peer objects as it stands now. */
@RuleCheck(id = "objection-stands", severity = Severity.WARNING, signOff = true, summary = "A peer objects to a rule as it stands now")
public final class ObjectionStands implements Check {

	@Override
	public void report(Checked checked) {
		for (Agreement rule : Peers.all(checked)) {
			for (Review review : rule.objections()) {
				String reviewer = review.reviewer().isBlank() ? "Somebody" : review.reviewer();
				checked.flaw(this, Peers.id(review), rule.span())
						.says(reviewer + " objects to " + Peers.named(checked, rule) + " as it stands"
								+ (review.note().isBlank() ? "." : ": \"" + review.note() + "\""))
						.near(review.span(), "the review").about(review.meaning() + review.note()).add();
			}
		}
	}
}
