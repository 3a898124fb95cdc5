package org.baywright.model;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What a family means by cycling a state, so that its modules test themselves again.
 *
 * @param state the state
 * @param steps the values it is put to and the waits between them, in their order
 * @param span where it is written
 */
public record Cycle(String state, List<Step> steps, Span span) {

	/**
	 * A value or a wait.
	 *
	 * @param value the value that the state is put to; empty for a wait
	 * @param minutes how long to wait; 0 for a value
	 */
	public record Step(Optional<String> value, BigDecimal minutes) {
	}

	public Cycle {
		steps = List.copyOf(steps);
	}

	/** Returns the values that the state goes through, in their order. */
	public List<String> values() {
		return steps.stream().flatMap(step -> step.value().stream()).toList();
	}
}
