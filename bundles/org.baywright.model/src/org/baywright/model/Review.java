package org.baywright.model;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/**
 * A peer's opinion of a rule. It is tied to the meaning the rule had then: when the meaning changes, it is stale.
 *
 * @param rule name of the rule
 * @param reviewer who
 * @param date when
 * @param agrees whether the reviewer agrees
 * @param note what the reviewer remarks, or the empty text
 * @param meaning fingerprint of the rule's meaning at that time
 * @param replies what was answered, in the order of the text
 * @param span where it is written
 */
public record Review(String rule, String reviewer, LocalDate date, boolean agrees, String note, String meaning,
		List<Reply> replies, Span span) {

	public Review {
		replies = List.copyOf(replies);
	}

	/** Returns whether two names are of one person: blanks and capital letters do not matter. */
	public static boolean isSame(String person, String other) {
		return plain(person).equals(plain(other));
	}

	private static String plain(String person) {
		return person.replaceAll("[\\s\\u00a0]", "").toLowerCase(Locale.ROOT);
	}
}
