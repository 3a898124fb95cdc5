package org.baywright.model;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a peer remarks on a rule, on a line of it or on a whole change. It is no opinion of the rule and blocks nothing.
 *
 * @param rule name of the rule, or empty if it is on a change
 * @param change the change in words, or the empty text
 * @param author who
 * @param date when
 * @param note the remark
 * @param meaning fingerprint of the rule's meaning at that time, or the empty text
 * @param line the line of the rule that it speaks of, as it was written then
 * @param replies what was answered, in the order of the text
 * @param span where it is written
 */
public record Remark(Optional<String> rule, String change, String author, LocalDate date, String note, String meaning,
		Optional<String> line, List<Reply> replies, Span span) {

	public Remark {
		replies = List.copyOf(replies);
	}

	/** Returns whether somebody has said that it is settled. */
	public boolean isSettled() {
		return replies.stream().anyMatch(Reply::settles);
	}
}
