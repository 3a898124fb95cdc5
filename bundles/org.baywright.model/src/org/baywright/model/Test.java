package org.baywright.model;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A test a technician can do.
 *
 * @param name name of the test
 * @param title what a technician calls it
 * @param domain its results
 * @param part the part it works on, whose hazards it shares
 * @param tools tools it needs
 * @param states states the vehicle is put into for it
 * @param prepare what to do before it, one step each
 * @param takes duration in minutes, 0 or more
 * @param cost in the project's own money unit, 0 or more
 * @param skill who may do it
 * @param fits parts fitted for the test: a substitute part, or a dummy load that isolates a module
 * @param disturbs findings that can not be trusted after it
 * @param cautions hazards that its instructions warn of
 * @param span where its name stands
 */
public record Test(String name, String title, Domain domain, Optional<String> part, List<String> tools,
		List<StateSetting> states, List<String> prepare, BigDecimal takes, BigDecimal cost, Skill skill,
		List<String> fits, List<String> disturbs, List<String> cautions, Span span) implements Named {

	public Test {
		tools = List.copyOf(tools);
		states = List.copyOf(states);
		prepare = List.copyOf(prepare);
		fits = List.copyOf(fits);
		disturbs = List.copyOf(disturbs);
		cautions = List.copyOf(cautions);
	}

	/** Returns what doing it once costs with its tools, in the project's own money unit. */
	public BigDecimal cost(RuleBase base) {
		return tools.stream().map(base::tool).flatMap(Optional::stream).map(Tool::cost).reduce(cost, BigDecimal::add);
	}
}
