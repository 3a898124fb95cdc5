package org.baywright.model;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What the vehicle can be put into, such as {@code ignition : off, on, cranking}.
 *
 * @param name name of the state
 * @param title what a technician calls it
 * @param values its values
 * @param minutes how long getting to a value takes, in minutes, 0 or more, by the value; without those of which nobody says it
 * @param span where its name stands
 */
public record State(String name, String title, List<NamedValue> values, Map<String, BigDecimal> minutes, Span span) implements Named {

	public State {
		values = List.copyOf(values);
		minutes = Collections.unmodifiableMap(new TreeMap<>(minutes));
	}

	/** A state of which nobody says how long getting to its values takes. */
	public State(String name, String title, List<NamedValue> values, Span span) {
		this(name, title, values, Map.of(), span);
	}

	/** Returns how long getting to a value takes, in minutes; nothing if nobody says. */
	public Optional<BigDecimal> minutesTo(String value) {
		return Optional.ofNullable(minutes.get(value));
	}
}
