package org.baywright.analysis.check;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.model.Meaning;
import org.baywright.model.Rule;
import org.baywright.model.Severity;

/** A question that the limit on the search left open. It is neither fine nor wrong: nobody knows. */
@RuleCheck(id = "undecided", severity = Severity.WARNING, summary = "The search was stopped by its limit before it had an answer")
public final class Undecided implements Check {

	@Override
	public void report(Checked checked) {
		for (Component part : checked.parts()) {
			for (String question : part.undecided()) {
				Rule first = checked.base().rule(part.rules().get(0)).orElseThrow();
				checked.flaw(this, first.name() + "/" + Meaning.fingerprint(question), first.span())
						.says("It was not decided " + question + ": the search reached its limit.")
						.shownBy(new Evidence.Undecided(question))
						.about(first).add();
			}
		}
	}
}
