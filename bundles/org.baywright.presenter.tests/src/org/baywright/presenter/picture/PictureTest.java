package org.baywright.presenter.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.baywright.presenter.RuleScope;
import org.junit.jupiter.api.Test;

class PictureTest {

	private static final RuleBase SMALL = Examples.rules("family osier \"Osier van\"", "sign no_crank \"No crank\"",
			"sign click", "module bcm", "code low on bcm = raw \"1\"",
			"part battery \"Battery\" { fault flat \"Flat\" fault worn }",
			"test volts \"Voltage\" { measures V 0 .. 18 step 0.1 }", "test load { results pass, fail }",
			"rule first \"First\" { given no_crank or not click run volts on below 12 V : confirms battery.flat",
			"  on 12 V .. 12.9 V : suspects battery.worn on at_least 13 V : suspects battery.worn",
			"  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }",
			"rule second \"Second\" { given battery.worn suspected, battery.flat not confirmed, low missing, bcm silent",
			"  given volts at_least 12 V run load on fail : confirms battery.worn on pass : clears battery.worn",
			"  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }",
			"rule apart { given click then refers \"somebody\" because \"a\" source memory by \"R. Falk\" on 2026-03-02 }");

	private static String edges(Picture picture) {
		return picture.edges().stream().map(edge -> edge.from() + " > " + edge.to() + " " + edge.kind()
				+ (edge.label().isEmpty() ? "" : " [" + edge.label() + "]")).sorted().collect(Collectors.joining("\n"));
	}

	@Test
	void drawsWhatIsGivenTestedAndSaid() {
		Picture picture = Picture.of(SMALL, RuleScope.family("osier"));
		assertEquals("""
				code:low > rule:second GIVEN [missing]
				module:bcm > rule:second GIVEN [silent]
				rule:apart > refers:somebody FOLLOWS
				rule:first > confirmed:battery.flat FOLLOWS [below 12.0 V]
				rule:first > suspected:battery.worn FOLLOWS [12.0 V to 12.9 V / 13.0 V or more]
				rule:second > cleared:battery.worn FOLLOWS [pass]
				rule:second > confirmed:battery.worn FOLLOWS [fail]
				sign:click > rule:apart GIVEN
				sign:click > rule:first ALTERNATIVE [absent]
				sign:no_crank > rule:first ALTERNATIVE
				suspected:battery.worn > rule:second GIVEN
				test:volts > rule:second GIVEN [12.0 V or more]""", edges(picture).replace(
				"confirmed:battery.flat > rule:second GIVEN [not]\n", ""));
		assertTrue(edges(picture).contains("confirmed:battery.flat > rule:second GIVEN [not]"), edges(picture));
		assertEquals("3 rules for Osier van", picture.title());
		assertEquals("Battery: Flat", picture.node("confirmed:battery.flat").orElseThrow().title());
		assertEquals("Voltage", picture.node("rule:first").orElseThrow().detail());
	}

	@Test
	void scopesLeaveOutTheRest() {
		assertEquals(List.of("apart"), names(new RuleScope.Around.OneRule("apart")));
		assertEquals(List.of("first", "second"), names(new RuleScope.Around.OneRule("first")));
		assertEquals(List.of("first", "second"), names(new RuleScope.Around.OneSign("no_crank")));
		assertEquals(List.of("apart", "first", "second"), names(new RuleScope.Around.OneSign("click")));
		assertEquals(List.of("first", "second"), names(new RuleScope.Around.OneFault("battery.flat")));
		assertEquals(List.of(), names(new RuleScope.Around.OneRule("gone")));
		assertEquals("2 rules about “No crank” for Osier van",
				Picture.of(SMALL, RuleScope.family("osier").around(new RuleScope.Around.OneSign("no_crank"))).title());
	}

	private static List<String> names(RuleScope.Around around) {
		return RuleScope.family("osier").around(around).rules(SMALL).stream().map(rule -> rule.name()).toList();
	}

	@Test
	void everyExampleIsWholeAndFollowsItsFamily() {
		for (String name : Examples.ALL) {
			RuleBase base = Examples.checked(name).rules();
			for (Family family : base.vehicleFamilies()) {
				Picture picture = Picture.of(base, RuleScope.family(family.name()));
				Set<String> ids = new HashSet<>();
				picture.nodes().forEach(node -> assertTrue(ids.add(node.id()), node.id()));
				picture.edges().forEach(edge -> assertTrue(ids.contains(edge.from()) && ids.contains(edge.to()), edge.toString()));
				assertEquals(base.rules().stream().filter(rule -> base.reach(rule.scope()).contains(family.name())).count(),
						picture.rules());
				assertFalse(picture.nodes().stream().anyMatch(node -> node.title().isBlank()));
			}
		}
	}
}
