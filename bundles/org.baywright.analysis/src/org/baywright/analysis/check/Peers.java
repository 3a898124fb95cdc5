package org.baywright.analysis.check;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.proof.Checked;
import org.baywright.model.Agreement;
import org.baywright.model.Conclusion;
import org.baywright.model.Fault;
import org.baywright.model.Part;
import org.baywright.model.Review;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/** What the checks of peer review have in common. */
final class Peers {

	private Peers() {
	}

	/** Returns how peers stand to each rule and chain, also of what the project builds on. */
	static List<Agreement> all(Checked checked) {
		return checked.shared("agreements", () -> Agreement.all(checked.base()));
	}

	/** Returns how peers stand to the rules and chains for which the project's own sign-off holds; none without one. */
	static List<Agreement> signedOff(Checked checked) {
		return all(checked).stream().filter(rule -> rule.signOff().isPresent()).toList();
	}

	/** Returns whether nobody has reviewed any of the project's own rules, which is told once. */
	static boolean isUntouched(Checked checked) {
		return signedOff(checked).stream().allMatch(rule -> rule.reviews().isEmpty());
	}

	/** Returns what a flaw about a review is about. */
	static String id(Review review) {
		return review.rule() + "/" + review.reviewer() + "/" + review.date();
	}

	/** Returns a rule or a chain as it is called in a sentence. */
	static String named(Checked checked, Agreement rule) {
		return (checked.base().rule(rule.name()).isPresent() ? "rule " : "chain ") + rule.name();
	}

	/** Returns the hazards that a rule or a chain touches: those of its tests, and of the parts whose faults it confirms. */
	static Set<String> hazards(RuleBase base, Agreement agreement) {
		List<Rule> rules = base.rule(agreement.name()).map(List::of).orElseGet(() -> base.chain(agreement.name()).orElseThrow().rules());
		Set<String> hazards = new TreeSet<>();
		for (Rule rule : rules) {
			rule.test().flatMap(base::test).ifPresent(test -> hazards.addAll(test.hazards(base)));
			rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream()).map(said -> confirmed(base, said)).flatMap(Optional::stream)
					.map(Part::hazards).forEach(hazards::addAll);
		}
		return hazards;
	}

	private static Optional<Part> confirmed(RuleBase base, Conclusion said) {
		return said instanceof Conclusion.OnFault on && on.verdict() == VerdictKind.CONFIRMED ? base.fault(on.fault()).map(Fault::part).flatMap(base::part)
				: Optional.empty();
	}
}
