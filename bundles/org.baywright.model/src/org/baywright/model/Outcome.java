package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * One branch of a rule.
 *
 * @param label the author's label, such as {@code met}, {@code below} or {@code on lit}; {@code then} without a test
 * @param values the results of the rule's test that lead here; empty for a rule without a test
 * @param listed whether the author gave the values as one band of a table ({@code on …}) or as the expected result,
 *            and not as the rest ({@code otherwise}, {@code below}, {@code above})
 * @param conclusions what it says
 * @param span where the label and its values are written
 */
public record Outcome(String label, Optional<ValueSet> values, boolean listed, List<Conclusion> conclusions,
		Span span) {

	public Outcome {
		conclusions = List.copyOf(conclusions);
	}
}
