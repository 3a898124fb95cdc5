package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.Contradiction;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Replay;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.api.Test;

/**
 * {@link Contradiction}, the "ambivalence" of Preece and Shinghal 1994 and the "conflict" of Suwa, Scott and Shortliffe
 * 1982.
 */
class ContradictionTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(Contradiction.class);
		assertShows(rules, rules.only(Contradiction.class), "battery.flat", "flat_at_rest", "holds_up");
	}

	private static void assertShows(MarkedFlaws rules, Flaw flaw, String fault, String... fired) {
		CaseResult result = Replay.assertShows(rules, flaw, seen -> Replay.says(seen, VerdictKind.CONFIRMED, fault)
				&& Replay.says(seen, VerdictKind.CLEARED, fault));
		assertTrue(result.fired().containsAll(List.of(fired)), result::toString);
	}

	@Test
	void rulesThatAskForDifferentResultsDoNotMeet() {
		MarkedFlaws.check(Contradiction.class, """
				family tarn
				sign slow_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow_crank run rest expect at_least 12.4 V below : confirms battery.flat }
				rule b { given slow_crank, rest at_least 12400 mV run cranking expect at_least 9.6 V met : clears battery.flat }
				""");
	}

	@Test
	void oneStepApartTheyMeet() {
		MarkedFlaws rules = MarkedFlaws.check(Contradiction.class, """
				family tarn
				sign slow_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow_crank run rest expect at_least 12.4 V below : confirms battery.flat }
				//                                                        ^^^^^ error contradiction: Rule a confirms battery.flat (flat) and rule b clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; slow_crank; cranking: 9.6 V; rest: 12.3 V
				//   also: line 10 (rule b, met)
				rule b { given slow_crank, rest at_least 12.3 V run cranking expect at_least 9.6 V met : clears battery.flat }
				""");
		assertShows(rules, rules.only(Contradiction.class), "battery.flat", "a", "b");
	}

	@Test
	void aLawKeepsThemApart() {
		MarkedFlaws.check(Contradiction.class, """
				family tarn
				sign slow_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				test cranking { measures V 0 .. 18 step 0.1 }
				law "Who holds up is charged" : when cranking at_least 9.6 V then rest at_least 12.4 V
				rule a { given slow_crank run rest expect at_least 12.4 V below : confirms battery.flat }
				rule b { given slow_crank run cranking expect at_least 9.6 V met : clears battery.flat }
				""");
	}

	@Test
	void aChainIsFollowedToItsBeginning() {
		MarkedFlaws rules = MarkedFlaws.check(Contradiction.class, """
				family tarn
				sign no_crank
				module bcm
				code low_supply on bcm = raw "17"
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule first { given no_crank, low_supply present then suspects battery.flat }
				rule second { given battery.flat suspected run rest expect at_least 12.4 V below : confirms battery.flat }
				//                                                                         ^^^^^ error contradiction: Rule second, which builds on rule first, confirms battery.flat (flat) and rule third clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; no_crank; code low_supply present in bcm; rest: 12.3 V
				//   also: line 12 (rule third, then), line 7 (rule first, then)
				rule third { given no_crank, bcm answers then clears battery.flat }
				""");
		assertShows(rules, rules.only(Contradiction.class), "battery.flat", "first", "second", "third");
	}

	@Test
	void eachRuleBetweenIsNamedFromTheBeginningOfItsChain() {
		MarkedFlaws rules = MarkedFlaws.check(Contradiction.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				part relay { fault stuck }
				part cable { fault loose }
				test rest { measures V 0 .. 18 step 0.1 }
				test click { results heard, none }
				rule end { given relay.stuck cleared then clears battery.flat }
				rule middle { given cable.loose not confirmed, cable.loose cleared run click on heard : clears relay.stuck }
				rule begin { given no_crank run rest on at_least 12 V : clears cable.loose }
				rule spare { given cable.loose cleared, relay.stuck cleared then suspects cable.loose }
				rule worn { given no_crank, cable.loose suspected then confirms battery.flat }
				//                                                ^^^^ error contradiction: Rule worn, which builds on rules begin, middle and spare, confirms battery.flat (flat) and rule end, which builds on rules begin and middle, clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; no_crank; click: heard; rest: 12.0 V
				//   also: line 8 (rule end, then), line 10 (rule begin, on at_least 12 V), line 9 (rule middle, on heard), line 11 (rule spare, then)
				""");
		assertShows(rules, rules.only(Contradiction.class), "battery.flat", "begin", "middle", "end", "spare", "worn");
	}

	@Test
	void theWitnessNamesTheFamilyAndTheTraitThatMatter() {
		MarkedFlaws rules = MarkedFlaws.check(Contradiction.class, """
				family tarn "Tarn" { trait engine : diesel, petrol }
				family heron "Heron" { trait engine : diesel, petrol  trait lift : none, fitted }
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				test sway { results stays, changes }
				rule a { given hum run play on felt : confirms hub.worn }
				//                          ^^^^^^^ error contradiction: Rule a confirms hub.worn (worn) and rule b clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: Heron with engine petrol; hum; play: felt; sway: stays
				//   also: line 11 (rule b, on stays)
				rule b { for heron where engine is petrol given hum run sway on stays : clears hub.worn }
				""");
		assertShows(rules, rules.only(Contradiction.class), "hub.worn", "a", "b");
	}

	@Test
	void twoRulesAreToldOnceForAllFamilies() {
		MarkedFlaws rules = MarkedFlaws.check(Contradiction.class, """
				family tarn "Tarn"
				family heron "Heron"
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				test sway { results stays, changes }
				rule a { given hum run play on felt : confirms hub.worn }
				//                          ^^^^^^^ error contradiction: Rule a confirms hub.worn (worn) and rule b clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: Tarn; hum; play: felt; sway: stays
				//   also: line 14 (rule b, on stays)
				//                          ^^^^^^^ error contradiction: Rule a confirms hub.worn (worn) and rule c clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: Tarn; hum; play: felt; sway: stays
				//   also: line 15 (rule c, on stays, changes)
				rule b { given hum run sway on stays : clears hub.worn }
				rule c { given hum run sway on stays, changes : clears hub.worn }
				""");
		assertEquals(List.of("contradiction:hub.worn/a/b", "contradiction:hub.worn/a/c"),
				rules.of(Contradiction.class).stream().map(Flaw::id).toList());
	}

	@Test
	void oneLineThatClearsSeveralFaultsIsToldOnce() {
		MarkedFlaws rules = MarkedFlaws.check(Contradiction.class, """
				family tarn "Tarn"
				sign hum
				part hub { fault worn fault loose fault cracked }
				test play { results none, felt }
				test sway { results stays, changes }
				rule a { given hum run play on felt : confirms hub.cracked, hub.worn, hub.loose }
				//                          ^^^^^^^ error contradiction: Rule a confirms hub.cracked (cracked), hub.loose (loose) and hub.worn (worn) and rule b clears them in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: Tarn; hum; play: felt; sway: stays
				//   also: line 10 (rule b, on stays)
				rule b { given hum run sway on stays : clears hub.worn, hub.loose, hub.cracked }
				""");
		assertEquals("contradiction:hub.cracked+hub.loose+hub.worn/a/b", rules.only(Contradiction.class).id());
	}

	@Test
	void eachTwoRulesOnceThoughBothSayBoth() {
		MarkedFlaws.check(Contradiction.class, """
				family tarn
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				test colour { results clear, rusty }
				test smell { results none, sweet }
				rule a { given hot run level on low : confirms radiator.leaking on full : clears radiator.leaking }
				//                           ^^^^^^ error contradiction: Rule a confirms radiator.leaking (leaking) and rule b clears it in the same situation; withdraw one of the two, or add a condition to one of the rules. The same goes for other results of these two rules.
				//   witness: tarn; hot; colour: clear; level: low; smell: sweet
				//   also: line 11 (rule b, on clear)
				rule b { given hot, smell is sweet run colour on rusty : confirms radiator.leaking on clear : clears radiator.leaking }
				""");
	}

	@Test
	void theFamilyThatShowsItWithFewestFlaws() {
		MarkedFlaws.check(Contradiction.class, """
				family tarn
				family heron
				sign hot
				part radiator { fault leaking }
				part pump { fault dry }
				test level { results full, low }
				test colour { results clear, rusty }
				rule first { for tarn given hot, level is low then suspects pump.dry }
				rule second { for heron given hot then suspects pump.dry }
				rule a { given pump.dry suspected then confirms radiator.leaking }
				//                                ^^^^ error contradiction: Rule a, which builds on rule second, confirms radiator.leaking (leaking) and rule b clears it in the same situation; withdraw one of the two, or add a condition to one of the rules.
				//   witness: heron; hot; colour: clear
				//   also: line 14 (rule b, on clear), line 9 (rule second, then)
				rule b { given hot run colour on clear : clears radiator.leaking }
				""");
	}
}
