package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Reviewer;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Written;

/** A sign-off that asks for a qualification that no reviewer has. */
@RuleCheck(id = "unknown-qualification", severity = Severity.WARNING, signOff = true, summary = "The sign-off asks for a qualification that no reviewer has")
public final class UnknownQualification implements Check {

	@Override
	public void report(Checked checked) {
		checked.base().signOff().ifPresent(signOff -> signOff.hazards().stream()
				.filter(of -> qualified(checked.base(), of.qualification()).isEmpty()).forEach(of -> checked.flaw(this, of.hazard() + "/" + of.qualification(), of.span())
						.says("No reviewer is qualified \"" + of.qualification() + "\", so nobody can agree with rules that touch hazard " + of.hazard()
								+ "; say who is, such as: reviewer \"T. Ruhland\" qualified \"" + of.qualification() + "\".")
						.about(of.hazard() + of.qualification())
						.fix(new Fix.AddElement("Say who is qualified so", "reviewer \"\" qualified " + Written.text(of.qualification()))).add()));
	}

	/** Returns the reviewers who are qualified for something, sorted. */
	static List<String> qualified(RuleBase base, String qualification) {
		return base.reviewers().stream().filter(reviewer -> reviewer.qualifications().contains(qualification)).map(Reviewer::name).distinct().sorted().toList();
	}
}
