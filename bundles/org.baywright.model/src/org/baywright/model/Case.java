package org.baywright.model;

import java.math.BigDecimal;
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
 * @param record what it took, and how it went on
 * @param vin the vehicle's identification number, if recorded
 * @param span where its name stands
 */
public record Case(String name, String family, List<Reading> traits, List<Reading> found, List<String> causes,
		boolean referred, Record record, Optional<String> vin, Span span) implements Named {

	/**
	 * What is kept of a job beside its end.
	 *
	 * @param minutes what it took, 0 if nobody says
	 * @param cost what it cost, in the project's own money, 0 if nobody says
	 * @param afterwards what was found after the repair
	 * @param backAfter after how many days the vehicle came back with the same complaint; empty if it did not
	 */
	public record Record(BigDecimal minutes, BigDecimal cost, List<Reading> afterwards, Optional<BigDecimal> backAfter) {

		/** Nothing is kept. */
		public static final Record NONE = new Record(BigDecimal.ZERO, BigDecimal.ZERO, List.of(), Optional.empty());

		public Record {
			afterwards = List.copyOf(afterwards);
		}
	}

	/** A job of which only the end is known. */
	public Case(String name, String family, List<Reading> traits, List<Reading> found, List<String> causes, boolean referred,
			Optional<String> vin, Span span) {
		this(name, family, traits, found, causes, referred, Record.NONE, vin, span);
	}

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
