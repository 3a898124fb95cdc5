package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Chain;
import org.baywright.model.Review;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/** A rule to which a peer objects as it stands now. */
@RuleCheck(id = "objection-stands", severity = Severity.WARNING, summary = "A peer objects to a rule as it stands now")
public final class ObjectionStands implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		List<Review> fresh = base.reviews().stream()
				.filter(review -> base.meaning(review.rule()).filter(review.meaning()::equals).isPresent()).toList();
		for (Review review : fresh) {
			if (!review.agrees() && fresh.stream().noneMatch(other -> takesBack(other, review))) {
				boolean isRule = base.rule(review.rule()).isPresent();
				String reviewer = review.reviewer().isBlank() ? "Somebody" : review.reviewer();
				checked.flaw(this, review.rule() + "/" + review.reviewer() + "/" + review.date(), base.reviewable(review.rule()).orElseThrow().span())
						.says(reviewer + " objects to " + (isRule ? "rule " : "chain ") + review.rule() + " as it stands"
								+ (review.note().isBlank() ? "." : ": \"" + review.note() + "\""))
						.near(review.span(), "the review").about(review.meaning() + review.note()).add();
			}
		}
	}

	/** Returns whether the same reviewer has agreed with the same meaning that day or later. */
	private static boolean takesBack(Review later, Review objection) {
		return later.agrees() && later.rule().equals(objection.rule()) && later.reviewer().equals(objection.reviewer())
				&& !later.date().isBefore(objection.date());
	}
}
