package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * A platform family: vehicles that share their wiring and modules. A system, such as an immobiliser that unlike families
 * are fitted with, is kept as a family too: it has traits, and what is written for it reaches all families that have it.
 *
 * @param name name of the family
 * @param title what a technician calls it
 * @param parent the family it builds on, whose traits and rules hold for it too
 * @param systems the systems that it has, whose traits and rules hold for it too
 * @param kind whether vehicles belong to it
 * @param traits its own traits; one with the name of an inherited trait replaces it
 * @param vins its VIN patterns
 * @param cycles what it means by cycling a state; a state that is not named goes through all its values
 * @param span where its name stands
 */
public record Family(String name, String title, Optional<String> parent, List<String> systems, Kind kind,
		List<Trait> traits, List<VinPattern> vins, List<Cycle> cycles, Span span) implements Named {

	/** What a family is there for. */
	public enum Kind {
		/** Vehicles belong to it. */
		VEHICLES,
		/** Others build on it; no vehicle belongs to it. */
		BASE,
		/** Others have it; no vehicle belongs to it. */
		SYSTEM
	}

	public Family {
		systems = List.copyOf(systems);
		traits = List.copyOf(traits);
		vins = List.copyOf(vins);
		cycles = List.copyOf(cycles);
	}

	/** A family without systems and cycles. */
	public Family(String name, String title, Optional<String> parent, boolean base, List<Trait> traits,
			List<VinPattern> vins, Span span) {
		this(name, title, parent, List.of(), base ? Kind.BASE : Kind.VEHICLES, traits, vins, List.of(), span);
	}

	/** Returns whether it only serves others; no vehicle belongs to it itself. */
	public boolean base() {
		return kind != Kind.VEHICLES;
	}
}
