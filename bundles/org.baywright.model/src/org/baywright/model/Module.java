package org.baywright.model;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A control unit that can be asked over the vehicle's network. Who asks it has all its codes at once.
 *
 * @param name name of the module
 * @param title what a technician calls it
 * @param families families that have it; empty for all
 * @param answersIn states in which it must answer; its silence in any other state proves nothing. Empty: in all states
 * @param tools tools that asking it needs
 * @param takes how long asking it takes, in minutes, 0 or more
 * @param cost what asking it costs, in the project's own money unit, 0 or more
 * @param span where its name stands
 */
public record Module(String name, String title, List<String> families, List<StateSetting> answersIn, List<String> tools,
		BigDecimal takes, BigDecimal cost, Span span) implements Named {

	public Module {
		families = List.copyOf(families);
		answersIn = List.copyOf(answersIn);
		tools = List.copyOf(tools);
	}

	/** A module of which nobody says what asking it takes. */
	public Module(String name, String title, List<String> families, List<StateSetting> answersIn, Span span) {
		this(name, title, families, answersIn, List.of(), BigDecimal.ZERO, BigDecimal.ZERO, span);
	}

	/** Returns what it says itself of asking it; nothing if it says nothing. */
	public Optional<Workshop.Scan> asking() {
		return tools.isEmpty() && takes.signum() == 0 && cost.signum() == 0 ? Optional.empty() : Optional.of(new Workshop.Scan(tools, takes, cost));
	}

	/** Returns what asking it once costs with its tools, or what the workshop says of each, in the project's own money unit. */
	public BigDecimal cost(RuleBase base) {
		return base.scan(this).cost(base);
	}
}
