package org.baywright.model;

import java.util.List;

/** A part with the faults it can have and the hazards of working on it. */
public record Part(String name, String title, List<String> hazards, List<Fault> faults, Span span) implements Named {

	public Part {
		hazards = List.copyOf(hazards);
		faults = List.copyOf(faults);
	}
}
