package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Place;
import org.baywright.analysis.check.Circle;
import org.baywright.language.testing.Cores;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link Circle}, the "circularity" of Preece and Shinghal 1994, here only where it runs through an absence: rules that only
 * support each other have a least meaning.
 */
class CircleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(Circle.class);
		assertEachRuleCloses(rules, rules.only(Circle.class));
	}

	private static void assertEachRuleCloses(MarkedFlaws rules, Flaw flaw) {
		for (Place step : Cores.lines(flaw)) {
			String rule = step.note().split(" ")[1];
			MarkedFlaws rest = MarkedFlaws.of(Cores.withoutRule(rules.text(), rule));
			assertFalse(rest.ids().stream().anyMatch(id -> id.startsWith("circle:")), rule);
		}
	}

	@Test
	void aRuleThatWaitsForItsOwnAbsence() {
		MarkedFlaws rules = MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				rule a { given squeal, belt.worn not suspected then suspects belt.worn }
				//   ^ error circle: Whether belt.worn is suspected depends in a circle on its own absence, so that nothing can be proved; take a condition out of one of these: rule a.
				//   core: line 4 (rule a decides on belt.worn)
				""");
		assertEachRuleCloses(rules, rules.only(Circle.class));
	}

	@Test
	void aCircleOfThree() {
		MarkedFlaws rules = MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				part pump { fault dry }
				part idler { fault loose }
				test play { results none, felt }
				rule a { given squeal, belt.worn suspected run play on felt : suspects pump.dry }
				rule b { given pump.dry suspected run play on felt : clears idler.loose }
				rule c { given squeal, idler.loose not cleared then suspects belt.worn }
				//   ^ error circle: Whether idler.loose is cleared depends in a circle on its own absence, so that nothing can be proved; take a condition out of one of these: rule b, rule a, rule c.
				//   core: line 8 (rule b decides on idler.loose), line 7 (rule a decides on pump.dry), line 9 (rule c decides on belt.worn)
				rule aside { given squeal then suspects idler.loose }
				""");
		Flaw flaw = rules.only(Circle.class);
		assertEquals(3, Cores.lines(flaw).size());
		assertEachRuleCloses(rules, flaw);
	}

	@Test
	void rulesThatSupportEachOtherAreNoCircle() {
		MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				part pump { fault dry }
				rule a { given pump.dry suspected then suspects belt.worn }
				rule b { given belt.worn suspected then suspects pump.dry }
				rule c { given squeal then suspects pump.dry }
				""");
	}

	@Test
	void anAbsenceInOneDirectionIsNoCircle() {
		MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				part pump { fault dry }
				test play { results none, felt }
				rule a { given squeal run play on felt : confirms pump.dry }
				rule b { given squeal, pump.dry not confirmed then suspects belt.worn }
				""");
	}

	@Test
	void unexplainedLooksAtTheFaultsThatOtherRulesForTheSignConfirm() {
		MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				test play { results none, felt }
				rule a { given squeal unexplained run play on felt : confirms belt.worn }
				""");
		MarkedFlaws rules = MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				test play { results none, felt }
				test look { results fine, shiny }
				rule a { given squeal unexplained run play on felt : confirms belt.worn }
				//   ^ error circle: Whether belt.worn is confirmed depends in a circle on its own absence, so that nothing can be proved; take a condition out of one of these: rule a.
				//   core: line 6 (rule a decides on belt.worn)
				rule b { given squeal run look on shiny : confirms belt.worn }
				""");
		assertEquals("a", rules.text().substring(rules.only(Circle.class).span().offset()).substring(0, 1));
	}

	@Test
	void severalCirclesAreAllTold() {
		MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				part belt { fault worn }
				part pump { fault dry }
				part pulley { fault bent }
				part shaft { fault loose }
				rule a { given squeal, pump.dry not suspected then suspects belt.worn }
				//   ^ error circle: Whether pump.dry is suspected depends in a circle on its own absence, so that nothing can be proved; take a condition out of one of these: rule b, rule a.
				//   core: line 10 (rule b decides on pump.dry), line 7 (rule a decides on belt.worn)
				rule b { given squeal, belt.worn not suspected then suspects pump.dry }
				rule c { given squeal, shaft.loose not suspected then suspects pulley.bent }
				//   ^ error circle: Whether shaft.loose is suspected depends in a circle on its own absence, so that nothing can be proved; take a condition out of one of these: rule d, rule c.
				//   core: line 14 (rule d decides on shaft.loose), line 11 (rule c decides on pulley.bent)
				rule d { given squeal, pulley.bent not suspected then suspects shaft.loose }
				""");
	}

	@Test
	void throughTwoUnexplainedSigns() {
		MarkedFlaws.check(Circle.class, """
				family osier
				sign squeal
				sign shake
				part belt { fault worn }
				part pump { fault dry }
				test grip { results firm, loose }
				test level { results full, low }
				rule a { given squeal, shake unexplained run grip on loose : confirms belt.worn }
				//   ^ error circle: Whether pump.dry is confirmed depends in a circle on its own absence, so that nothing can be proved; take a condition out of one of these: rule b, rule a.
				//   core: line 11 (rule b decides on pump.dry), line 8 (rule a decides on belt.worn)
				rule b { given shake, squeal unexplained run level on low : confirms pump.dry }
				""");
	}
}
