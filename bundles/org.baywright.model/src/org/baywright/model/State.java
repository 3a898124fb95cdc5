package org.baywright.model;

import java.util.List;

/** What the vehicle can be put into, such as {@code ignition : off, on, cranking}. */
public record State(String name, String title, List<NamedValue> values, Span span) implements Named {

	public State {
		values = List.copyOf(values);
	}
}
