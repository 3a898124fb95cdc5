package org.baywright.analysis.check;

import java.util.Collection;
import java.util.HashSet;
import java.util.Set;

import org.baywright.analysis.Situation;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Condition;
import org.baywright.model.Conclusion;
import org.baywright.model.Law;
import org.baywright.model.LeftOut;
import org.baywright.model.Rule;

/**
 * What is not told as long as elements are left out because their text is wrong: that something is missing which may be
 * in them, or that something is possible which a law among them may forbid. The error of the text is told alone.
 */
final class HeldBack {

	/** Faults on which rules that are left out decide, or rules that wait for what these decide. */
	private final Set<String> faults = new HashSet<>();
	/** What these rules speak of. */
	private final Set<String> things = new HashSet<>();
	/** What laws that are left out speak of, and laws that share something with them. */
	private final Set<String> lawful = new HashSet<>();
	private final Set<String> waiting = new HashSet<>();
	private final boolean any;

	private HeldBack(Checked checked) {
		any = !checked.base().leftOut().isEmpty();
		for (LeftOut element : checked.base().leftOut()) {
			faults.addAll(element.decides());
			things.addAll(element.speaksOf());
			if (element.isLaw()) {
				lawful.addAll(element.speaksOf());
			}
		}
		boolean more = any;
		while (more) {
			more = false;
			for (Rule rule : checked.base().rules()) {
				more |= takesIn(rule);
			}
			for (Law law : checked.base().laws()) {
				more |= takesIn(law);
			}
		}
	}

	static HeldBack in(Checked checked) {
		return checked.shared("held back", () -> new HeldBack(checked));
	}

	private boolean takesIn(Rule rule) {
		Set<String> named = new HashSet<>();
		boolean[] waits = { false };
		rule.given().forEach(given -> given.eachAtom(atom -> {
			named.add(atom.about());
			waits[0] |= atom.match(
					(Condition.TraitIs is) -> false,
					(Condition.SignIs is) -> false,
					(Condition.TestIs is) -> false,
					(Condition.CodeIs is) -> false,
					(Condition.ModuleIs is) -> false,
					(Condition.VerdictIs is) -> faults.contains(is.fault()),
					(Condition.Unexplained is) -> things.contains(is.sign()));
		}));
		if (!waits[0] || !waiting.add(rule.name())) {
			return false;
		}
		rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(said -> {
			if (said instanceof Conclusion.OnFault on) {
				faults.add(on.fault());
			}
		}));
		things.addAll(named);
		rule.test().ifPresent(things::add);
		return true;
	}

	private boolean takesIn(Law law) {
		Set<String> named = new HashSet<>();
		law.when().eachAtom(atom -> named.add(atom.about()));
		law.then().eachAtom(atom -> named.add(atom.about()));
		return named.stream().anyMatch(lawful::contains) && lawful.addAll(named);
	}

	/** Returns whether anything is left out. */
	boolean any() {
		return any;
	}

	/** Returns whether verdicts on the fault may be missing only because a rule is left out. */
	boolean decides(String fault) {
		return faults.contains(fault);
	}

	/** As {@link #decides(String)} for any of several. */
	boolean decides(Collection<String> some) {
		return some.stream().anyMatch(faults::contains);
	}

	/** Returns whether a rule that is left out, or one that waits for it, may use the finding. */
	boolean uses(String finding) {
		return things.contains(finding);
	}

	/** Returns whether the rule waits for a verdict that may be missing only because a rule is left out. */
	boolean waits(Rule rule) {
		return waiting.contains(rule.name());
	}

	/** Returns whether the rule has to do with anything that is left out. */
	boolean touches(Rule rule) {
		boolean[] touches = { waits(rule) || rule.test().filter(things::contains).isPresent() };
		rule.given().forEach(given -> given.eachAtom(
				atom -> touches[0] |= things.contains(atom.about()) || faults.contains(atom.about())));
		return touches[0] || rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream())
				.anyMatch(said -> said instanceof Conclusion.OnFault on && faults.contains(on.fault()));
	}

	/** Returns whether a law that is left out may forbid the situation. */
	boolean mayForbid(Situation situation) {
		return situation.facts().stream().anyMatch(fact -> lawful.contains(fact.variable().name()));
	}
}
