package org.baywright.model;

/**
 * A way in which a part fails.
 *
 * @param name {@code part.fault}
 * @param title what a technician says
 * @param part name of the part
 * @param seen finished jobs in which this was the cause, 0 or more
 * @param span where its name stands
 */
public record Fault(String name, String title, String part, int seen, Span span) implements Named {
}
