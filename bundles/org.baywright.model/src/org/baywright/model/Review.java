package org.baywright.model;

import java.time.LocalDate;

/**
 * A peer's opinion of a rule. It is tied to the meaning the rule had then: when the meaning changes, it is stale.
 *
 * @param rule name of the rule
 * @param reviewer who
 * @param date when
 * @param agrees whether the reviewer agrees
 * @param note what the reviewer remarks, or the empty text
 * @param meaning fingerprint of the rule's meaning at that time
 * @param span where it is written
 */
public record Review(String rule, String reviewer, LocalDate date, boolean agrees, String note, String meaning,
		Span span) {
}
