package org.baywright.analysis.check;

import java.util.TreeSet;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.VerifyStep;

/** A verification that does not repeat what confirmed the fault: the test, or the reading of the code. */
@RuleCheck(id = "verify-not-repeated", severity = Severity.WARNING, summary = "A verification does not repeat what confirmed the fault")
public final class VerifyNotRepeated implements Check {

	@Override
	public void report(Checked checked) {
		for (Repair repair : checked.base().repairs()) {
			if (repair.verify().isEmpty()
					|| repair.verify().stream().anyMatch(VerifyStep.RepeatWhatConfirmed.class::isInstance)) {
				continue; // reported as unverified, or repeats all there is
			}
			Verification walk = new Verification(checked.base(), repair);
			TreeSet<String> missing = new TreeSet<>();
			TreeSet<String> rules = new TreeSet<>();
			for (String fault : repair.fixes()) {
				for (Rule rule : Confirming.rules(checked, repair, fault)) {
					TreeSet<String> evidence = evidence(rule);
					if (!evidence.isEmpty() && evidence.stream()
							.noneMatch(name -> walk.repeats(name) || walk.looksAgainFor(name))) {
						missing.add(String.join(" or ", evidence));
						rules.add(rule.name());
					}
				}
			}
			if (!missing.isEmpty()) {
				Checked.Draftsman flaw = checked.flaw(this, repair.name(), repair.span())
						.says("The verification of repair " + repair.name() + " does not repeat " + String.join(", ", missing)
								+ ", which confirmed the fault; add \"repeat what confirmed\".")
						.fix(new Fix.AddLine("Also repeat what confirmed the fault", "verify", repair.name(),
								"repeat what confirmed"));
				rules.forEach(name -> checked.base().rule(name).ifPresent(rule -> flaw.about(rule)
						.near(rule.span(), "rule " + name + " confirms it")));
				flaw.about(repair.verify().stream().map(step -> step.getClass().getSimpleName()).toList().toString())
						.add();
			}
		}
	}

	/** Returns the test that a rule confirms by; without one, the tests and codes it asks for. */
	private static TreeSet<String> evidence(Rule rule) {
		TreeSet<String> evidence = new TreeSet<>();
		if (rule.test().isPresent()) {
			evidence.add(rule.test().get());
		} else {
			rule.given().forEach(given -> collect(given, evidence));
		}
		return evidence;
	}

	private static void collect(Condition condition, TreeSet<String> into) {
		condition.visit(
				(Condition.And and) -> and.parts().forEach(part -> collect(part, into)),
				(Condition.Or or) -> or.parts().forEach(part -> collect(part, into)),
				(Condition.Not not) -> { },
				(Condition.Atom atom) -> atom.visit(
						(Condition.TraitIs is) -> { },
						(Condition.SignIs is) -> { },
						(Condition.TestIs is) -> into.add(is.test()),
						(Condition.CodeIs is) -> {
							if (is.reading() == CodeReading.PRESENT) {
								into.add(is.code());
							}
						},
						(Condition.ModuleIs is) -> { },
						(Condition.VerdictIs is) -> { },
						(Condition.Unexplained is) -> { }));
	}
}
