package org.baywright.model;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A test a technician can do.
 *
 * @param name name of the test
 * @param title what a technician calls it
 * @param scope the vehicles on which it can be done
 * @param domain its results
 * @param seenWith the test while which it is seen; whatever else is asked of how it is done is found there ({@link RuleBase#doneBy})
 * @param part the part it works on, whose hazards it shares
 * @param place where on the vehicle it is done, in words
 * @param pictures what shows where or how it is done
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
public record Test(String name, String title, Scope scope, Domain domain, Optional<String> seenWith,
		Optional<String> part, Optional<String> place, List<Picture> pictures, List<String> tools, List<StateSetting> states, List<Preparation> prepare, BigDecimal takes,
		BigDecimal cost, Skill skill, List<String> fits, List<String> disturbs, List<String> cautions, Span span) implements Named {

	public Test {
		pictures = List.copyOf(pictures);
		tools = List.copyOf(tools);
		states = List.copyOf(states);
		prepare = List.copyOf(prepare);
		fits = List.copyOf(fits);
		disturbs = List.copyOf(disturbs);
		cautions = List.copyOf(cautions);
	}

	/** A test on every vehicle that is done by itself, of which nobody says where on it it is done. */
	public Test(String name, String title, Domain domain, Optional<String> part, List<String> tools,
			List<StateSetting> states, List<Preparation> prepare, BigDecimal takes, BigDecimal cost, Skill skill,
			List<String> fits, List<String> disturbs, List<String> cautions, Span span) {
		this(name, title, Scope.EVERY, domain, Optional.empty(), part, Optional.empty(), List.of(), tools, states, prepare, takes, cost, skill, fits, disturbs, cautions,
				span);
	}

	/** Returns it as what is seen with another test, which alone says how it is done. */
	public Test asSeenWith(String other) {
		return new Test(name, title, scope, domain, Optional.of(other), part, place, pictures, List.of(), List.of(), List.of(), BigDecimal.ZERO,
				BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), cautions, span);
	}

	/** Returns what doing it once, or the test that it is seen with, costs with its tools, in the project's own money unit. */
	public BigDecimal cost(RuleBase base) {
		Test done = base.doneBy(this);
		return Tool.cost(base, done.tools).add(done.cost);
	}

	/** Returns the hazards that its instructions warn of, with those of the test that it is seen with. */
	public Set<String> cautions(RuleBase base) {
		Set<String> all = new LinkedHashSet<>(cautions);
		all.addAll(base.doneBy(this).cautions);
		return all;
	}

	/** Returns the hazards of doing it: those that its instructions warn of, and those of the part that it works on. */
	public Set<String> hazards(RuleBase base) {
		Set<String> all = cautions(base);
		part(base).flatMap(base::part).map(Part::hazards).ifPresent(all::addAll);
		return all;
	}

	/** Returns the findings that nobody can make any more after it: those that it disturbs, without tests that say how to prepare the vehicle for them anew. */
	public List<String> spoils(RuleBase base) {
		return disturbs.stream().filter(name -> base.test(name).map(base::doneBy).map(test -> test.prepare().isEmpty()).orElse(true)).toList();
	}

	/** Returns the part that it works on: its own, or else that of the test that it is seen with. */
	public Optional<String> part(RuleBase base) {
		return part.or(() -> base.doneBy(this).part);
	}
}
