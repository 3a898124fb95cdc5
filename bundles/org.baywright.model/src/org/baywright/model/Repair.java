package org.baywright.model;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How a confirmed fault is put right, and how that is proved.
 *
 * @param name name of the repair
 * @param title what a technician calls it
 * @param scope the vehicles on which it can be done
 * @param fixes faults it puts right
 * @param place where on the vehicle it is done, in words
 * @param pictures what shows where or how it is done
 * @param steps what to do
 * @param cautions hazards that its instructions warn of
 * @param tools tools it needs
 * @param takes duration in minutes, 0 or more
 * @param cost in the project's own money unit, 0 or more
 * @param skill who may do it
 * @param notices who is told what about it
 * @param changesForGood what is not as before: a compromise, a disabled function
 * @param verified whether the author wrote how it is verified
 * @param verify steps that prove the repair
 * @param span where its name stands
 */
public record Repair(String name, String title, Scope scope, List<String> fixes, Optional<String> place, List<Picture> pictures, List<String> steps,
		List<String> cautions, List<String> tools, BigDecimal takes, BigDecimal cost, Skill skill, List<Notice> notices,
		List<String> changesForGood, boolean verified, List<VerifyStep> verify, Span span) implements Named {

	/** A repair for every vehicle, without pictures. */
	public Repair(String name, String title, List<String> fixes, Optional<String> place, List<String> steps,
			List<String> cautions, List<String> tools, BigDecimal takes, BigDecimal cost, Skill skill, List<Notice> notices,
			List<String> changesForGood, boolean verified, List<VerifyStep> verify, Span span) {
		this(name, title, Scope.EVERY, fixes, place, List.of(), steps, cautions, tools, takes, cost, skill, notices, changesForGood, verified, verify, span);
	}

	public Repair {
		fixes = List.copyOf(fixes);
		pictures = List.copyOf(pictures);
		steps = List.copyOf(steps);
		cautions = List.copyOf(cautions);
		tools = List.copyOf(tools);
		notices = List.copyOf(notices);
		changesForGood = List.copyOf(changesForGood);
		verify = List.copyOf(verify);
	}

	/** Returns the hazards of doing it: those that it warns of, and those of the parts whose faults it puts right. */
	public Set<String> hazards(RuleBase base) {
		Set<String> all = new LinkedHashSet<>(cautions);
		fixes.forEach(fault -> base.fault(fault).flatMap(found -> base.part(found.part())).map(Part::hazards).ifPresent(all::addAll));
		return all;
	}

	/** Returns what doing it costs with its tools, in the project's own money unit. */
	public BigDecimal cost(RuleBase base) {
		return Tool.cost(base, tools).add(cost);
	}
}
