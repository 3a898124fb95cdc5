package org.baywright.analysis.check;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Severity;

/** A finished job that the rules do not bring to the end that it had. */
@RuleCheck(id = "failing-job", severity = Severity.ERROR, summary = "The rules do not bring a finished job to its known end")
public final class FailingJob implements Check {

	@Override
	public void report(Checked checked) {
		for (CaseResult result : checked.cases()) {
			if (!result.passed() && !isHeldBack(HeldBack.in(checked), result)) {
				Checked.Draftsman flaw = checked.flaw(this, result.job().name(), result.job().span())
						.says("The job \"" + result.job().name() + "\" fails: " + result.message());
				result.blamed().forEach(blame -> {
					checked.base().rule(blame.rule()).ifPresent(flaw::about);
					flaw.near(blame.span(), blame.does());
				});
				flaw.about(result.job().name()).add();
			}
		}
	}

	/** A rule that is left out may find the cause, keep another from being found, or refer. */
	private static boolean isHeldBack(HeldBack heldBack, CaseResult result) {
		return heldBack.decides(result.job().causes())
				|| result.verdicts().stream().anyMatch(verdict -> heldBack.decides(verdict.fault()))
				|| result.job().referred() && result.job().found().stream().anyMatch(reading -> heldBack.uses(reading.subject()));
	}
}
