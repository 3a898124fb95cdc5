package org.baywright.model;

/**
 * Something the customer or the technician notices.
 *
 * @param name name of the sign
 * @param title what a technician says: "Engine does not crank"
 * @param intermittent whether it comes and goes; its absence on the day then proves nothing
 * @param span where its name stands
 */
public record Sign(String name, String title, boolean intermittent, Span span) implements Named {
}
