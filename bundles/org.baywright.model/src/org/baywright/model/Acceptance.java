package org.baywright.model;

import java.time.LocalDate;
import java.util.Optional;

/**
 * The author's word that a warning is known and why it may stand.
 *
 * @param flaw the flaw's id and the fingerprint of the meaning it was seen on, as {@code id@fingerprint}
 * @param reason why it may stand
 * @param author who accepts it
 * @param date when
 * @param span where it is written
 */
public record Acceptance(String flaw, String reason, Optional<String> author, Optional<LocalDate> date, Span span) {

	/** Returns the part before the last {@code @}. */
	public String flawId() {
		int at = flaw.lastIndexOf('@');
		return at < 0 ? flaw : flaw.substring(0, at);
	}

	/** Returns the part after the last {@code @}, or the empty text. */
	public String meaning() {
		int at = flaw.lastIndexOf('@');
		return at < 0 ? "" : flaw.substring(at + 1);
	}
}
