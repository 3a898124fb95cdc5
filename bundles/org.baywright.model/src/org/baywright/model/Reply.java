package org.baywright.model;

import java.time.LocalDate;

/**
 * What somebody answers to a review or a remark.
 *
 * @param settles whether it says that the matter is settled
 * @param author who answers
 * @param date when
 * @param text the answer, or the empty text
 * @param span where it is written
 */
public record Reply(boolean settles, String author, LocalDate date, String text, Span span) {
}
