package org.baywright.model;

import java.util.Set;
import java.util.TreeSet;

/**
 * What is known of a rule, a law or a test that is not in the rule base as its text is wrong: what seems to be missing
 * in the others may be in this one.
 *
 * @param isLaw whether it is a law, without which more seems possible than is
 * @param decides faults on which it comes to a conclusion
 * @param speaksOf names of all tests, signs, codes, modules and faults in it
 */
public record LeftOut(boolean isLaw, Set<String> decides, Set<String> speaksOf) {

	public LeftOut {
		decides = Set.copyOf(decides);
		speaksOf = Set.copyOf(speaksOf);
	}

	/** Returns what is known of a rule that speaks of something that was left out itself. */
	static LeftOut of(Rule rule) {
		Set<String> decides = new TreeSet<>();
		rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(said -> {
			if (said instanceof Conclusion.OnFault on) {
				decides.add(on.fault());
			}
		}));
		Set<String> speaksOf = new TreeSet<>(decides);
		rule.test().ifPresent(speaksOf::add);
		rule.given().forEach(given -> given.eachAtom(atom -> speaksOf.add(atom.about())));
		return new LeftOut(false, decides, speaksOf);
	}

	/** Returns what is known of a law that speaks of something that was left out itself. */
	static LeftOut of(Law law) {
		Set<String> speaksOf = new TreeSet<>();
		law.when().eachAtom(atom -> speaksOf.add(atom.about()));
		law.then().eachAtom(atom -> speaksOf.add(atom.about()));
		return new LeftOut(true, Set.of(), speaksOf);
	}
}
