package org.baywright.analysis.check;

import java.util.Optional;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Meaning;
import org.baywright.model.Review;
import org.baywright.model.Rule;
import org.baywright.model.Severity;

/** A review of a rule whose meaning has changed since. */
@RuleCheck(id = "stale-review", severity = Severity.WARNING, summary = "A review is not of the rule as it stands now")
public final class StaleReview implements Check {

	/** What a review carries before anybody has said which meaning was read. */
	private static final String NONE = "00000000";

	@Override
	public void report(Checked checked) {
		for (Review review : checked.base().reviews()) {
			Optional<Rule> rule = checked.base().rule(review.rule());
			if (rule.isPresent() && !Meaning.fingerprint(rule.get()).equals(review.meaning())) {
				checked.finding(this, review.rule() + "/" + review.reviewer() + "/" + review.date(), review.span())
						.says(sentence(review, Meaning.fingerprint(rule.get())))
						.near(rule.get().span(), "rule " + review.rule())
						.fix(new Fix.ReplaceText(
								review.meaning().equals(NONE) ? "Say that it was read as it stands" : "Say that the opinion still holds",
								review.span(), quoted(review.meaning()), quoted(Meaning.fingerprint(rule.get()))))
						.about(rule.get()).add();
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

	private static String quoted(String meaning) {
		return '"' + meaning + '"';
	}
}
