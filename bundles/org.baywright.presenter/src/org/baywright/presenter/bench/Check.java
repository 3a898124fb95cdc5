package org.baywright.presenter.bench;

import java.util.Optional;

import org.baywright.model.Reading;

/**
 * One line of a verification.
 *
 * @param at where it stands; what commands on the bench take
 * @param text what to do, as a sentence
 * @param expected what must be read, in words; the empty text where nothing is read
 * @param subject how to enter what is read; empty for what is only ticked
 * @param read what was read
 * @param said the same in words; the empty text before it is read
 * @param ticked whether it is ticked; never for what is read
 * @param verdict whether it is as expected
 * @param note what to say of what was read; the empty text for nothing
 */
public record Check(At at, String text, String expected, Optional<Subject> subject, Optional<Reading> read, String said, boolean ticked, Verdict verdict,
		String note) {

	/** What is known of a line. */
	public enum Verdict {
		/** It is not done, or what was read does not tell. */
		OPEN,
		/** It is done, and what was read is as expected. */
		AS_EXPECTED,
		/** What was read is other than expected. */
		NOT_AS_EXPECTED
	}
}
