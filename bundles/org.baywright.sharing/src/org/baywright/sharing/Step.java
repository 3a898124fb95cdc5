package org.baywright.sharing;

import java.time.Instant;

/**
 * A step that was done in a copy.
 *
 * @param number counts the steps of the copy
 * @param words what was done, as a sentence without its point
 * @param date when
 * @param undone whether it was undone
 */
public record Step(int number, String words, Instant date, boolean undone) {
}
