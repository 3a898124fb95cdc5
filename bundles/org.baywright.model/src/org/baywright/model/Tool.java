package org.baywright.model;

import java.math.BigDecimal;

/** A tool; {@code cost} is what using it once costs, in the project's own money unit, 0 or more. */
public record Tool(String name, String title, BigDecimal cost, Span span) implements Named {
}
