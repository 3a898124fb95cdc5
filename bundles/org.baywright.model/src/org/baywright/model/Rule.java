package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * A diagnostic rule: on these vehicles, given this, run that test; each result proves what its outcome says, no more.
 *
 * @param name name of the rule
 * @param title the rule in words
 * @param scope vehicles it speaks of
 * @param given preconditions, all of which must hold
 * @param states states the vehicle is in when the findings are taken, beside those of the test
 * @param test the test to run, if the rule has one
 * @param outcomes branches; a rule without a test has exactly one, labelled {@code then}
 * @param provenance who, when, why
 * @param testSpan where the test is named; the rule's own place without a test
 * @param span where the rule's name stands
 */
public record Rule(String name, String title, Scope scope, List<Condition> given, List<StateSetting> states,
		Optional<String> test, List<Outcome> outcomes, Provenance provenance, Span testSpan, Span span)
		implements Named {

	public Rule {
		given = List.copyOf(given);
		states = List.copyOf(states);
		outcomes = List.copyOf(outcomes);
	}
}
