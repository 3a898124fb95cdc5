package org.baywright.model;

import java.util.Optional;

/** One step of proving that a repair worked. */
public sealed interface VerifyStep {

	/** Returns where the step is written. */
	Span span();

	/** Clear the module's codes. Reaches the module only while it answers. */
	record Clear(String module, Span span) implements VerifyStep {
	}

	/** Take the state through all its values and back, so that modules test themselves again. */
	record Cycle(String state, Span span) implements VerifyStep {
	}

	/** Put the vehicle into a state. */
	record Put(StateSetting setting, Span span) implements VerifyStep {
	}

	/** Read the module's codes. */
	record Read(String module, Span span) implements VerifyStep {
	}

	/** The code just read must be present or absent. */
	record Expect(String code, boolean present, Span span) implements VerifyStep {
	}

	/** Repeat the test; with values, it must give one of them. */
	record Repeat(String test, Optional<ValueSet> values, Span span) implements VerifyStep {
	}

	/** Repeat whichever test confirmed the fault; it must no longer confirm. */
	record RepeatWhatConfirmed(Span span) implements VerifyStep {
	}
}
