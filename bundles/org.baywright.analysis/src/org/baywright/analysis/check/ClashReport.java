package org.baywright.analysis.check;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

import org.baywright.analysis.Fix;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.model.Conclusion;
import org.baywright.model.Fault;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;

/** Tells of pairs of rules, each once, with the smallest situation that shows it in any family. */
final class ClashReport {

	private ClashReport() {
	}

	static void report(Checked checked, ProofCheck<List<Pairs.Clash>> check, Function<Pairs.Clash, String> sentence) {
		Smallest<Pairs.Clash> smallest = new Smallest<>();
		checked.each(check, (part, clashes) -> clashes.forEach(clash -> smallest.add(clash.pair(), part, clash, clash.situation())));
		smallest.each((pair, part, clash) -> report(checked, check, clash, part, sentence.apply(clash)));
	}

	private static void report(Checked checked, Check check, Pairs.Clash clash, Component part, String sentence) {
		Rule first = checked.base().rule(clash.first()).orElseThrow();
		Rule second = checked.base().rule(clash.second()).orElseThrow();
		Checked.Draftsman finding = checked.finding(check, clash.key(), first.outcomes().get(clash.firstOutcome()).span())
				.says(sentence).shownBy(checked.witness(part, clash.situation()))
				.near(List.of(checked.place(clash.second(), clash.secondOutcome()))).about(first).about(second);
		List<String> faults = Arrays.asList(clash.subject().split("\\+"));
		withdraw(checked, second, clash.secondOutcome(), faults, finding);
		withdraw(checked, first, clash.firstOutcome(), faults, finding);
		finding.add();
	}

	/** Either rule may prove too much; but what nothing else confirms stays, or the fault could never be found. */
	private static void withdraw(Checked checked, Rule rule, int outcome, List<String> faults, Checked.Draftsman finding) {
		for (Conclusion conclusion : rule.outcomes().get(outcome).conclusions()) {
			if (conclusion instanceof Conclusion.OnFault on && faults.contains(on.fault())
					&& (on.verdict() != VerdictKind.CONFIRMED || isConfirmedElsewhere(checked, on))) {
				String verb = switch (on.verdict()) {
				case CONFIRMED -> "confirms";
				case SUSPECTED -> "suspects";
				case CLEARED -> "clears";
				};
				String title = "Withdraw: " + rule.name() + " " + verb + " " + on.fault();
				finding.fix(new Fix.Withdraw(title, rule.name(), on.fault(), on.span()));
			}
		}
	}

	private static boolean isConfirmedElsewhere(Checked checked, Conclusion.OnFault here) {
		return checked.base().rules().stream().flatMap(rule -> rule.outcomes().stream())
				.flatMap(outcome -> outcome.conclusions().stream())
				.anyMatch(said -> said instanceof Conclusion.OnFault on && on.verdict() == VerdictKind.CONFIRMED
						&& on.fault().equals(here.fault()) && !on.span().equals(here.span()));
	}

	/** Returns the fault as people say it, with its name. */
	static String say(Checked checked, String fault) {
		return checked.base().fault(fault).map(Fault::title).filter(title -> !title.equals(fault))
				.map(title -> fault + " (" + title + ")").orElse(fault);
	}
}
