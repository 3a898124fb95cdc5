package org.baywright.model;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Optional;

/** A tool; {@code cost} is what using it once costs, in the project's own money unit, 0 or more. */
public record Tool(String name, String title, BigDecimal cost, Span span) implements Named {

	/** Returns what using each of the tools once costs, in the project's own money unit. */
	static BigDecimal cost(RuleBase base, Collection<String> tools) {
		return tools.stream().map(base::tool).flatMap(Optional::stream).map(Tool::cost).reduce(BigDecimal.ZERO, BigDecimal::add);
	}
}
