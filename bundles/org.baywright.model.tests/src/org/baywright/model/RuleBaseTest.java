package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.junit.jupiter.api.Test;

class RuleBaseTest {

	private final RuleBase base = Small.with("").base.build();

	private static Scope scope(List<String> families, List<String> except) {
		return new Scope(families, except, Optional.empty(), Span.NONE);
	}

	@Test
	void vehiclesBelongToAllFamiliesButThoseForOthersOnly() {
		assertEquals(List.of("van"), base.vehicleFamilies().stream().map(Family::name).toList());
		assertEquals(List.of("van", "wires", "all"), base.lineage("van"));
		assertEquals(List.of("all", "van"), base.descendants("all"));
		assertEquals(List.of(), base.lineage("gone"));
		assertEquals(List.of(), base.descendants("gone"));
	}

	@Test
	void aFamilyInheritsTraitsAndMayReplaceThem() {
		assertEquals(List.of("engine", "built"), List.copyOf(base.traitsOf("van").keySet()));
		assertEquals("electric", base.traitsOf("van").get("engine").domain().say(0));
		assertEquals("diesel", base.traitsOf("all").get("engine").domain().say(0));
		assertTrue(base.traitsOf("gone").isEmpty());
	}

	@Test
	void aScopeReachesWhatBuildsOnItsFamilies() {
		assertEquals(Set.of("van"), base.reach(scope(List.of(), List.of())));
		assertEquals(Set.of("van"), base.reach(scope(List.of("all"), List.of())));
		assertEquals(Set.of(), base.reach(scope(List.of("all"), List.of("van"))));
		assertEquals(Set.of(), base.reach(scope(List.of("gone"), List.of())));
		assertTrue(base.reaches(List.of(), "van"));
		assertTrue(base.reaches(List.of("all"), "van"));
		assertFalse(base.reaches(List.of("van"), "all"));
	}

	@Test
	void familiesMayBuildOnEachOtherInACircle() {
		RuleBase.Builder circle = new RuleBase.Builder("circle");
		circle.families.add(new Family("a", "", Optional.of("b"), false, List.of(), List.of(), Span.NONE));
		circle.families.add(new Family("b", "", Optional.of("a"), false, List.of(), List.of(), Span.NONE));
		assertEquals(List.of("a", "b"), circle.build().lineage("a"));
	}

	@Test
	void theFirstOfTwoHolds() {
		assertTrue(base.hasUniqueRuleNames());
		RuleBase.Builder twice = new RuleBase.Builder("twice").add(base);
		Rule old = base.rules().get(0);
		twice.rules.add(new Rule(old.name(), "second", old.scope(), List.of(), List.of(), Optional.empty(), List.of(),
				old.provenance(), Span.NONE, Span.NONE));
		twice.families.add(new Family("all", "second", Optional.of("van"), true, List.of(), List.of(), Span.NONE));
		RuleBase built = twice.build();
		assertFalse(built.hasUniqueRuleNames());
		assertSame(old, built.rule("flat").orElseThrow());
		assertEquals(List.of("van", "wires", "all"), built.lineage("van"));
		assertEquals(List.of("all"), built.lineage("all").subList(0, 1));
		assertEquals(1, built.traitsOf("all").size());
	}

	@Test
	void findsElementsByName() {
		assertEquals("Load it", base.repair("charge").orElseThrow().title());
		assertEquals("gap:gone", base.acceptances().get(0).flawId());
		assertEquals(Optional.empty(), base.repair("gone"));
	}
}
