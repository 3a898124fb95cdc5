package org.baywright.analysis.check;

import java.util.Optional;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Review;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.Written;

/** A review of a rule whose meaning has changed since. */
@RuleCheck(id = "stale-review", severity = Severity.WARNING, summary = "A review is not of the rule as it stands now")
public final class StaleReview implements Check {

	/** What a review carries before anybody has said which meaning was read. */
	private static final String NONE = "00000000";

	@Override
	public void report(Checked checked) {
		for (Review review : checked.base().reviews()) {
			Optional<String> now = checked.base().meaning(review.rule());
			if (now.isPresent() && !now.get().equals(review.meaning())) {
				boolean isRule = checked.base().rule(review.rule()).isPresent();
				Checked.Draftsman flaw = checked.flaw(this, review.rule() + "/" + review.reviewer() + "/" + review.date(), review.span())
						.says(sentence(review, now.get()))
						.near(checked.base().reviewable(review.rule()).orElseThrow().span(), (isRule ? "rule " : "chain ") + review.rule())
						.fix(new Fix.ReplaceText(
								review.meaning().equals(NONE) ? "Say that it was read as it stands" : "Say that the opinion still holds",
								review.span(), Written.text(review.meaning()), Written.text(now.get())));
				checked.base().rule(review.rule()).ifPresentOrElse(flaw::about, () -> flaw.about(review.rule() + now.get()));
				flaw.add();
			}
		}
	}

	private static String sentence(Review review, String now) {
		String reviewer = review.reviewer().isBlank() ? "somebody" : review.reviewer();
		return review.meaning().equals(NONE)
				? "The review of rule " + review.rule() + " by " + reviewer + " does not say yet what was read; if it is the rule as it stands now, write meaning \""
						+ now + "\"."
				: "Rule " + review.rule() + " has changed its meaning since " + reviewer + " reviewed it on " + review.date()
						+ "; if the opinion still holds, write meaning \"" + now + "\".";
	}
}
