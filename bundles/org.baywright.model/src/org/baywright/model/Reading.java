package org.baywright.model;

import java.math.BigDecimal;

/** One thing found on a vehicle. */
public sealed interface Reading {

	/** Returns the name of the trait, sign, test, code or module. */
	String subject();

	/** Returns where it is written. */
	Span span();

	/** A named value of a trait or a named result of a test. */
	record Named(String subject, String value, Span span) implements Reading {
	}

	/** A number, in the unit of the trait or test. */
	record Measured(String subject, BigDecimal value, Span span) implements Reading {
	}

	/** A sign that is present or absent. */
	record SignSeen(String subject, boolean present, Span span) implements Reading {
	}

	/** A code's reading; never {@link CodeReading#MISSING}. */
	record CodeRead(String subject, CodeReading reading, Span span) implements Reading {
	}

	/** A module that answers or is silent. */
	record ModuleAsked(String subject, boolean answers, Span span) implements Reading {
	}
}
