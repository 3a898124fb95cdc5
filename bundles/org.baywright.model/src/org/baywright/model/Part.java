package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * A part with the faults it can have and the hazards of working on it.
 *
 * @param name name of the part
 * @param title what a technician calls it
 * @param place where it is found on the vehicle, in words
 * @param pictures what shows it or where it is
 * @param hazards what is dangerous about it
 * @param faults what can be wrong with it
 * @param span where its name stands
 */
public record Part(String name, String title, Optional<String> place, List<Picture> pictures, List<String> hazards,
		List<Fault> faults, Span span) implements Named {

	/** A part without pictures. */
	public Part(String name, String title, Optional<String> place, List<String> hazards, List<Fault> faults, Span span) {
		this(name, title, place, List.of(), hazards, faults, span);
	}

	/** A part of which nobody says where it is. */
	public Part(String name, String title, List<String> hazards, List<Fault> faults, Span span) {
		this(name, title, Optional.empty(), hazards, faults, span);
	}

	public Part {
		pictures = List.copyOf(pictures);
		hazards = List.copyOf(hazards);
		faults = List.copyOf(faults);
	}
}
