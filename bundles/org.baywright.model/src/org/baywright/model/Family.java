package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * A platform family: vehicles that share their wiring and modules.
 *
 * @param name name of the family
 * @param title what a technician calls it
 * @param parent the family it builds on, whose traits and rules hold for it too
 * @param base whether it only serves others to build on; no vehicle belongs to a base family itself
 * @param traits its own traits; one with the name of an inherited trait replaces it
 * @param vins its VIN patterns
 * @param span where its name stands
 */
public record Family(String name, String title, Optional<String> parent, boolean base, List<Trait> traits,
		List<VinPattern> vins, Span span) implements Named {

	public Family {
		traits = List.copyOf(traits);
		vins = List.copyOf(vins);
	}
}
