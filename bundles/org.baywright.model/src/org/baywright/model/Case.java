package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * A finished job as an executable example.
 *
 * @param name name of the job
 * @param family the vehicle's family
 * @param traits what is known of the vehicle
 * @param found what was found
 * @param causes faults that were the cause
 * @param referred whether the job was handed on instead
 * @param vin the vehicle's identification number, if recorded
 * @param span where its name stands
 */
public record Case(String name, String family, List<Reading> traits, List<Reading> found, List<String> causes,
		boolean referred, Optional<String> vin, Span span) implements Named {

	public Case {
		traits = List.copyOf(traits);
		found = List.copyOf(found);
		causes = List.copyOf(causes);
	}

	@Override
	public String title() {
		return name;
	}
}
