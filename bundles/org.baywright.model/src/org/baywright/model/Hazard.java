package org.baywright.model;

import java.util.List;

/**
 * Something that can hurt a person or the vehicle.
 *
 * @param name name in the hazard catalogue
 * @param title what it is
 * @param cautions what to do about it, one sentence each; a hazard without one is reported
 * @param licensed whose work it is where a licence is required, one entry each
 * @param references the instruments that say so, with their edition
 * @param span where its name stands
 */
public record Hazard(String name, String title, List<String> cautions, List<String> licensed, List<String> references,
		Span span) implements Named {

	public Hazard {
		cautions = List.copyOf(cautions);
		licensed = List.copyOf(licensed);
		references = List.copyOf(references);
	}
}
