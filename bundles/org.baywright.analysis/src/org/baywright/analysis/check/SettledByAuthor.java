package org.baywright.analysis.check;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Reply;
import org.baywright.model.Review;
import org.baywright.model.Severity;

/** An objection that the author of the rule calls settled. */
@RuleCheck(id = "settled-by-author", severity = Severity.WARNING, signOff = true, summary = "The author of a rule settles an objection to it, which does not count")
public final class SettledByAuthor implements Check {

	@Override
	public void report(Checked checked) {
		for (Agreement rule : Peers.all(checked)) {
			for (Review review : rule.objections()) {
				review.replies().stream().filter(reply -> reply.settles() && !reply.author().isBlank())
						.forEach(reply -> report(checked, rule, review, reply));
			}
		}
	}

	private void report(Checked checked, Agreement rule, Review review, Reply reply) {
		Checked.Draftsman flaw = checked.flaw(this, Peers.id(review) + "/" + reply.date(), reply.span())
				.says(reply.author() + " wrote " + Peers.named(checked, rule) + " and cannot settle the objection of " + review.reviewer()
						+ "; that is for " + review.reviewer() + ", or for anybody else.")
				.near(rule.span(), Peers.named(checked, rule)).about(review.meaning() + reply.author());
		if (!reply.text().isBlank()) { // a reply without a word is none
			flaw.fix(new Fix.ReplaceText("Make a reply of it", reply.span(), "settled", "reply"));
		}
		flaw.add();
	}
}
