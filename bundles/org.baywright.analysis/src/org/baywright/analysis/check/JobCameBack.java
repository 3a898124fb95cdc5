package org.baywright.analysis.check;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Meaning;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;

/** A finished job that came back counts against the rules that confirmed its cause. */
@RuleCheck(id = "job-came-back", severity = Severity.WARNING, summary = "A job came back with the same complaint after its repair")
public final class JobCameBack implements Check {

	@Override
	public void report(Checked checked) {
		for (CaseResult result : checked.cases()) {
			if (result.job().record().backAfter().isPresent()) {
				String days = Meaning.number(result.job().record().backAfter().get());
				String rules = result.confirming().isEmpty() ? "" : ", in which " + (result.confirming().size() == 1 ? "rule " : "rules ")
						+ Words.and(result.confirming()) + " confirmed the cause,";
				Checked.Draftsman flaw = checked.flaw(this, result.job().name(), result.job().span())
						.says("The job \"" + result.job().name() + "\"" + rules + " came back after " + days + (days.equals("1") ? " day" : " days")
								+ "; look whether the cause was another one, the repair does not last, or its verification passes too early.");
				for (String name : result.confirming()) {
					Rule rule = checked.base().rule(name).orElseThrow();
					flaw.about(rule).near(rule.span(), "rule " + name + " confirmed it");
				}
				flaw.about(result.job().name() + days).add();
			}
		}
	}
}
