package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.junit.jupiter.api.Test;

/** Families that have systems: what is written for a system reaches every family that has it, on whatever way. */
class SystemsTest {

	private static final RuleBase BASE = base();

	private static RuleBase base() {
		RuleBase.Builder base = new RuleBase.Builder("systems");
		base.states.add(new State("ignition", "Ignition", List.of(new NamedValue("off", "off", Span.NONE), new NamedValue("on", "on", Span.NONE)),
				Span.NONE));
		add(base, "bus", Optional.empty(), List.of(), Family.Kind.SYSTEM, List.of(trait("speed", "slow"), trait("plug", "round")), List.of());
		add(base, "door", Optional.empty(), List.of("bus"), Family.Kind.SYSTEM, List.of(trait("speed", "fast")), List.of(cycle("off", "on")));
		add(base, "van", Optional.empty(), List.of(), Family.Kind.BASE, List.of(trait("plug", "flat")), List.of(cycle("on", "off")));
		add(base, "small", Optional.of("van"), List.of(), Family.Kind.VEHICLES, List.of(), List.of());
		add(base, "large", Optional.of("van"), List.of("door"), Family.Kind.VEHICLES, List.of(), List.of());
		return base.build();
	}

	private static void add(RuleBase.Builder base, String name, Optional<String> parent, List<String> systems, Family.Kind kind,
			List<Trait> traits, List<Cycle> cycles) {
		base.families.add(new Family(name, name, parent, systems, kind, traits, List.of(), cycles, Span.NONE));
	}

	private static Trait trait(String name, String value) {
		return new Trait(name, "", new Domain.Names(List.of(new NamedValue(value, value, Span.NONE))), Span.NONE);
	}

	private static Cycle cycle(String from, String to) {
		return new Cycle("ignition", List.of(new Cycle.Step(Optional.of(from), BigDecimal.ZERO), new Cycle.Step(Optional.of(to), BigDecimal.ZERO)),
				Span.NONE);
	}

	@Test
	void itsOwnSystemsAreNearerThanWhatItBuildsOn() {
		assertEquals(List.of("large", "door", "bus", "van"), BASE.lineage("large"));
		assertEquals(List.of("small", "van"), BASE.lineage("small"));
		assertEquals(Optional.of("off"), BASE.cycle("large", "ignition").map(cycle -> cycle.values().get(0)));
		assertEquals(Optional.of("on"), BASE.cycle("small", "ignition").map(cycle -> cycle.values().get(0)));
		assertEquals(Optional.empty(), BASE.cycle("small", "hood"));
	}

	@Test
	void theNearestTraitCounts() {
		assertEquals("fast", value("large", "speed"));
		assertEquals("round", value("large", "plug"));
		assertEquals("flat", value("small", "plug"));
		assertEquals(Set.of("plug"), BASE.traitsOf("small").keySet());
	}

	private static String value(String family, String trait) {
		return ((Domain.Names) BASE.traitsOf(family).get(trait).domain()).values().get(0).name();
	}

	@Test
	void aScopeReachesWhoeverHasTheSystem() {
		assertEquals(Set.of("large"), reach(List.of("bus"), List.of()));
		assertEquals(Set.of("small"), reach(List.of(), List.of("door")));
		assertEquals(Set.of("small", "large"), reach(List.of("van", "door"), List.of()));
		assertEquals(List.of("small", "large"), BASE.vehicleFamilies().stream().map(Family::name).toList());
	}

	private static Set<String> reach(List<String> families, List<String> except) {
		return BASE.reach(new Scope(families, except, Optional.empty(), Span.NONE));
	}
}
