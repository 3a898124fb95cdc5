package org.baywright.analysis.check;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Review;
import org.baywright.model.Severity;
import org.baywright.model.SignOff;
import org.baywright.model.Written;
import org.baywright.model.words.Words;

/** A rule with which fewer agree, as it stands, than the sign-off asks for. */
@RuleCheck(id = "not-agreed", severity = Severity.WARNING, signOff = true, summary = "Fewer agree with a rule as it stands than the sign-off asks for")
public final class NotAgreed implements Check {

	@Override
	public void report(Checked checked) {
		int asked = checked.base().signOff().map(SignOff::agree).orElse(0);
		List<Agreement> rules = Peers.signedOff(checked);
		if (asked > 0 && !rules.isEmpty() && Peers.isUntouched(checked)) {
			SignOff signOff = checked.base().signOff().get();
			checked.flaw(this, "all", signOff.span())
					.says("Nobody has reviewed any rule of this project yet; each of the " + rules.size() + " needs " + people(asked) + " to agree with it as it stands.")
					.about(asked + " of " + rules.size()).add();
			return;
		}
		for (Agreement rule : rules) {
			List<Review> agreed = rule.agreed();
			if (agreed.size() < asked) {
				Checked.Draftsman flaw = checked.flaw(this, rule.name(), rule.span()).says(sentence(checked, rule, asked, agreed))
						.about(rule.meaning() + asked + agreed.size()).fix(agree(rule));
				rule.reviews().stream().filter(review -> !agreed.contains(review)).forEach(review -> flaw.near(review.span(), "does not count"));
				flaw.add();
			}
		}
	}

	private static String sentence(Checked checked, Agreement rule, int asked, List<Review> agreed) {
		String named = Peers.named(checked, rule);
		int missing = asked - agreed.size();
		String who = agreed.isEmpty() ? "nobody does"
				: agreed.size() + (agreed.size() == 1 ? " does (" : " do (") + Words.and(agreed.stream().map(Review::reviewer).toList()) + "), "
						+ missing + " more " + (missing == 1 ? "is" : "are") + " missing";
		Map<String, String> not = new LinkedHashMap<>();
		Stream.of(true, false).flatMap(fresh -> rule.reviews().stream().filter(review -> rule.isFresh(review) == fresh))
				.filter(review -> agreed.stream().noneMatch(other -> Review.isSame(other.reviewer(), review.reviewer())))
				.forEach(review -> not.putIfAbsent(review.reviewer().isBlank() ? "somebody" : review.reviewer(), why(rule, review)));
		return named.substring(0, 1).toUpperCase(Locale.ROOT) + named.substring(1) + " needs " + people(asked) + " to agree with it as it stands; " + who + "."
				+ (not.isEmpty() ? "" : " Not counted: " + not.entrySet().stream().map(one -> one.getKey() + " " + one.getValue()).collect(Collectors.joining("; ")) + ".");
	}

	private static String why(Agreement rule, Review review) {
		if (!rule.isFresh(review)) {
			return "reviewed what it meant before";
		} else if (rule.objections().stream().anyMatch(objection -> Review.isSame(objection.reviewer(), review.reviewer()))) {
			return "objects";
		} else if (!review.agrees()) {
			return "objected";
		}
		return rule.isBefore(review) ? "reviewed it before it was written" : rule.isAuthor(review.reviewer()) ? "wrote it" : "gives no name";
	}

	private static String people(int count) {
		return count == 1 ? "one person" : count + " people";
	}

	/** Returns what writes that somebody agrees with a rule as it stands; who and when stay open. */
	private static Fix agree(Agreement rule) {
		return new Fix.AddElement("Say that you agree with it as it stands",
				"review " + Written.name(rule.name()) + " " + Fix.AddElement.UNSIGNED + " agrees meaning " + Written.text(rule.meaning()));
	}
}
