package org.baywright.analysis.check;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Test;
import org.baywright.model.words.Words;

/** A rule that runs a test after others which disturb what it finds. */
@RuleCheck(id = "disturbed-evidence", severity = Severity.WARNING, summary = "A rule runs a test after one that disturbs it")
public final class DisturbedEvidence implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		Set<String> watched = new TreeSet<>();
		base.tests().forEach(test -> test.disturbs().stream().flatMap(name -> base.test(name).stream())
				.forEach(disturbed -> watched.addAll(List.of(test.name(), base.doneBy(disturbed).name()))));
		Behind behind = new Behind(checked, watched);
		for (Rule rule : watched.isEmpty() ? List.<Rule>of() : base.rules()) {
			Optional<Test> run = rule.test().flatMap(base::test);
			Optional<Test> done = run.map(base::doneBy);
			Set<String> before = behind.all(rule.given());
			// what was known before the rule need not have been found after it was disturbed
			if (run.isPresent() && !before.contains(done.get().name())) {
				List<Test> disturbing = before.stream().flatMap(name -> base.test(name).stream())
						.filter(test -> test.disturbs().contains(run.get().name()) || test.disturbs().contains(done.get().name())).toList();
				report(checked, rule, run.get(), disturbing);
			}
		}
	}

	private void report(Checked checked, Rule rule, Test run, List<Test> disturbing) {
		if (!disturbing.isEmpty()) {
			List<String> names = disturbing.stream().map(Test::name).toList();
			Checked.Draftsman flaw = checked.flaw(this, rule.name() + "/" + String.join("+", names), rule.testSpan())
					.says("Rule " + rule.name() + " runs test " + run.name() + " after " + Words.and(names) + ", which "
							+ (names.size() == 1 ? "disturbs" : "disturb") + " it; run it first, or let it prepare what was disturbed.")
					.about(rule);
			disturbing.forEach(test -> flaw.near(test.span(), "test " + test.name()).about(test.name() + test.disturbs()));
			flaw.add();
		}
	}
}
