package org.baywright.model;

/**
 * One of the values that an author listed: a result of a test, a value of a trait or of a state.
 *
 * @param name the value's name
 * @param title what a technician calls it; the name if none was given
 * @param span where it is listed
 */
public record NamedValue(String name, String title, Span span) {
}
