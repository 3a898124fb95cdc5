package org.baywright.model;

import java.util.List;

/** Faults of which only one can be the cause. */
public record Exclusive(List<String> faults, Span span) {

	public Exclusive {
		faults = List.copyOf(faults);
	}
}
