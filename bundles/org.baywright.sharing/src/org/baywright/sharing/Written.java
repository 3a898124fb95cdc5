package org.baywright.sharing;

import java.time.Instant;

/**
 * Who wrote something, and when.
 *
 * @param author the name
 * @param date when
 * @param title what it was called
 * @param note what else was said; may be empty
 * @param revision the state that it led to, for {@link SharedProject#texts(String)}
 */
public record Written(String author, Instant date, String title, String note, String revision) {
}
