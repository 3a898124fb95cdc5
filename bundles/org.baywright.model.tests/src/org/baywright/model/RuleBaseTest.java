package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
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

	private static Workshop workshop(String title, String file) {
		return new Workshop(title, Optional.empty(), Optional.of(new Workshop.Scan(List.of("meter"), BigDecimal.valueOf(4), BigDecimal.valueOf(2))), Optional.empty(),
				List.of(), Optional.empty(), new Span(file, 1, 1, 1, 2, 0, 1));
	}

	private static RuleBase.Builder tool() {
		RuleBase.Builder base = new RuleBase.Builder("shop");
		base.tools.add(new Tool("meter", "A meter", BigDecimal.TEN, Span.NONE));
		return base;
	}

	/** The files of what is built on come first, and in another order than they are built on. */
	@Test
	void theOwnWorkshopHoldsElseThatOfTheFirstBuiltOn() {
		RuleBase.Builder near = tool();
		near.workshops.add(workshop("near", "z.bay"));
		RuleBase.Builder far = tool();
		far.workshops.add(workshop("far", "a.bay"));
		RuleBase.Builder shop = tool();
		shop.workshops.add(workshop("far", "../a/a.bay"));
		shop.workshops.add(workshop("near", "../z/z.bay"));
		shop.builtOn.add(new BuiltOn("../none", "0", new RuleBase.Builder("none").build(), Span.NONE));
		shop.builtOn.add(new BuiltOn("../z", "0", near.build(), Span.NONE));
		shop.builtOn.add(new BuiltOn("../a", "0", far.build(), Span.NONE));
		assertEquals(Optional.of(workshop("near", "../z/z.bay")), shop.build().workshop());
		shop.workshops.add(workshop("own", "shop.bay"));
		assertEquals("own", shop.build().workshop().orElseThrow().title());
		assertEquals("own", new RuleBase.Builder("copy").add(shop.build()).build().workshop().orElseThrow().title());
		assertEquals(Optional.empty(), tool().build().workshop());
	}

	@Test
	void aModuleThatSaysNothingTakesWhatTheWorkshopSaysOfEach() {
		Module silent = new Module("silent", "Silent", List.of(), List.of(), Span.NONE);
		Module own = new Module("own", "Own", List.of(), List.of(), List.of(), BigDecimal.ONE, BigDecimal.ZERO, Span.NONE);
		RuleBase none = tool().build();
		assertEquals(new Workshop.Scan(List.of(), BigDecimal.ZERO, BigDecimal.ZERO), none.scan(silent));
		RuleBase.Builder shop = tool();
		shop.workshops.add(workshop("Yard", "shop.bay"));
		assertEquals(new Workshop.Scan(List.of("meter"), BigDecimal.valueOf(4), BigDecimal.valueOf(2)), shop.build().scan(silent));
		assertEquals(BigDecimal.valueOf(12), silent.cost(shop.build()));
		assertEquals(new Workshop.Scan(List.of(), BigDecimal.ONE, BigDecimal.ZERO), shop.build().scan(own));
		assertEquals(BigDecimal.ZERO, own.cost(shop.build()));
	}

	@Test
	void aStateSaysHowLongGettingToAValueTakes() {
		State state = new State("net", "Network", List.of(), Map.of("asleep", BigDecimal.valueOf(20)), Span.NONE);
		assertEquals(Optional.of(BigDecimal.valueOf(20)), state.minutesTo("asleep"));
		assertEquals(Optional.empty(), state.minutesTo("awake"));
	}
}
