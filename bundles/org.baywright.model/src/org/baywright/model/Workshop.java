package org.baywright.model;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What the shop that works by the rules has, and what its work costs.
 *
 * @param title what it is called; the empty text if nobody says
 * @param hour what an hour of work costs, in the project's own money unit, 0 or more
 * @param each what reading one module takes of which nobody says it
 * @param all what reading at once all modules that answer takes
 * @param lacks tools that are not at hand
 * @param skill the highest skill at hand
 * @param span where it is written
 */
public record Workshop(String title, Optional<BigDecimal> hour, Optional<Scan> each, Optional<Scan> all, List<String> lacks,
		Optional<Skill> skill, Span span) {

	public Workshop {
		lacks = List.copyOf(lacks);
	}

	/**
	 * What reading modules takes.
	 *
	 * @param tools tools that it needs
	 * @param takes how long it takes, in minutes, 0 or more
	 * @param cost what it costs beside the tools, in the project's own money unit, 0 or more
	 */
	public record Scan(List<String> tools, BigDecimal takes, BigDecimal cost) {

		public Scan {
			tools = List.copyOf(tools);
		}

		/** Takes nothing at all. */
		static final Scan NOTHING = new Scan(List.of(), BigDecimal.ZERO, BigDecimal.ZERO);

		/** Returns what it costs once with its tools, in the project's own money unit. */
		public BigDecimal cost(RuleBase base) {
			return Tool.cost(base, tools).add(cost);
		}
	}

	/** Returns whether another one says the same, wherever it stands. */
	boolean says(Workshop other) {
		return equals(new Workshop(other.title, other.hour, other.each, other.all, other.lacks, other.skill, span));
	}
}
