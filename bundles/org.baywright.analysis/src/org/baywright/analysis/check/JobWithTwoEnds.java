package org.baywright.analysis.check;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Case;
import org.baywright.model.Reading;
import org.baywright.model.Severity;
import org.baywright.model.words.Words;

/** A finished job with one complaint that says both what the cause was and that it was handed on instead. */
@RuleCheck(id = "job-with-two-ends", severity = Severity.WARNING, summary = "A finished job ends in its cause and in a referral")
public final class JobWithTwoEnds implements Check {

	@Override
	public void report(Checked checked) {
		for (Case job : checked.base().cases()) {
			long signs = job.found().stream().filter(found -> found instanceof Reading.SignSeen sign && sign.present()).count();
			// of two complaints one may have been explained and the other one handed on
			if (job.referred() && !job.causes().isEmpty() && signs < 2) {
				checked.flaw(this, job.name(), job.span())
						.says("Job \"" + job.name() + "\" was " + Words.and(job.causes()) + " and was referred; keep how it ended.")
						.about(job.causes().toString()).add();
			}
		}
	}
}
