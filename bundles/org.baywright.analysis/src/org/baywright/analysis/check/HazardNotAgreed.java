package org.baywright.analysis.check;

import java.util.List;
import java.util.Locale;
import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Review;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.SignOff;
import org.baywright.model.words.Words;

/** A rule that touches a hazard, and nobody who is qualified for that agrees with it. */
@RuleCheck(id = "hazard-not-agreed", severity = Severity.WARNING, signOff = true, summary = "A rule touches a hazard, and nobody qualified for it agrees")
public final class HazardNotAgreed implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		boolean toldOnce = base.signOff().filter(signOff -> signOff.agree() > 0).isPresent() && Peers.isUntouched(checked);
		for (Agreement rule : toldOnce ? List.<Agreement>of() : Peers.signedOff(checked)) {
			Set<String> hazards = Peers.hazards(base, rule);
			for (SignOff.OfHazard of : rule.signOff().orElseThrow().hazards()) {
				List<String> qualified = UnknownQualification.qualified(base, of.qualification());
				if (hazards.contains(of.hazard()) && !qualified.isEmpty()
						&& rule.agreed().stream().noneMatch(review -> isOneOf(qualified, review.reviewer()))) {
					String named = Peers.named(checked, rule);
					checked.flaw(this, rule.name() + "/" + of.hazard() + "/" + of.qualification(), rule.span())
							.says(named.substring(0, 1).toUpperCase(Locale.ROOT) + named.substring(1) + " touches hazard " + of.hazard()
									+ ", and nobody agrees with it as it stands who is qualified \"" + of.qualification() + "\"; that "
									+ (qualified.size() == 1 ? "is " : "are ") + Words.and(qualified) + ".")
							.near(of.span(), "the sign-off").about(rule.meaning() + of.hazard() + of.qualification()).add();
				}
			}
		}
	}

	private static boolean isOneOf(List<String> qualified, String person) {
		return qualified.stream().anyMatch(one -> Review.isSame(one, person));
	}
}
