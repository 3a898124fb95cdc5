package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Place;
import org.baywright.analysis.check.RedundantRule;
import org.baywright.language.testing.Cores;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link RedundantRule}, the "subsumed rule" of Preece and Shinghal 1994 and the "subsumption" of Suwa, Scott and
 * Shortliffe 1982, here also by several rules together.
 */
class RedundantRuleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(RedundantRule.class);
		assertCoverIsMinimal(rules, rules.only(RedundantRule.class));
	}

	/** Asserts that the rule is needed as soon as one of the rules that cover it is gone. */
	private static void assertCoverIsMinimal(MarkedFlaws rules, Flaw flaw) {
		for (Place line : Cores.lines(flaw)) {
			String text = Cores.withoutRule(rules.text(), line.note().substring("rule ".length()));
			MarkedFlaws rest = MarkedFlaws.of(text);
			assertEquals(0, rest.problems().size(), text);
			assertFalse(rest.ids().contains(flaw.id()), text);
		}
	}

	@Test
	void whatAddsOneVerdictIsNeeded() {
		MarkedFlaws.check(RedundantRule.class, """
				family osier
				sign hot
				sign smell
				part radiator { fault leaking fault blocked }
				test level { results full, low }
				rule a { given hot run level on low : confirms radiator.leaking }
				rule b { given hot, smell run level on low : confirms radiator.leaking on full : suspects radiator.blocked }
				""");
	}

	@Test
	void twoRulesTogetherCoverAThird() {
		MarkedFlaws rules = MarkedFlaws.check(RedundantRule.class, """
				family osier { trait engine : diesel, gas }
				sign hot
				sign smell
				part radiator { fault leaking }
				test level { results full, low }
				rule a { for osier where engine is diesel given hot run level on low : confirms radiator.leaking }
				rule b { for osier where engine is gas given hot run level on low : confirms radiator.leaking }
				rule c { given hot, smell run level on low : confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule c adds nothing: whenever it applies, rules a, b already say the same.
				//   core: line 6 (rule a), line 7 (rule b)
				""");
		Flaw flaw = rules.only(RedundantRule.class);
		assertEquals(2, Cores.lines(flaw).size());
		assertCoverIsMinimal(rules, flaw);
	}

	@Test
	void aChainCoversADirectRule() {
		MarkedFlaws rules = MarkedFlaws.check(RedundantRule.class, """
				family osier
				sign hot
				sign smell
				part radiator { fault leaking }
				test level { results full, low }
				rule a { given hot then suspects radiator.leaking }
				rule b { given radiator.leaking suspected run level on low : confirms radiator.leaking }
				rule c { given hot, smell run level on low : confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule c adds nothing: whenever it applies, rules a, b already say the same.
				//   core: line 6 (rule a), line 7 (rule b)
				""");
		assertCoverIsMinimal(rules, rules.only(RedundantRule.class));
	}

	@Test
	void aRuleThatSaysOnlyWhatItWaitsFor() {
		MarkedFlaws.check(RedundantRule.class, """
				family osier
				sign hot
				sign smell
				part radiator { fault leaking }
				test level { results full, low }
				rule a { given hot run level on low : confirms radiator.leaking }
				rule b { given radiator.leaking confirmed, smell then confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule b adds nothing: it says only what it waits for.
				""");
	}

	@Test
	void aRuleThatIsRedundantWhereverItIs() {
		MarkedFlaws.check(RedundantRule.class, """
				family osier
				family tarn
				sign hot
				part radiator { fault leaking }
				rule a { for osier given hot then suspects radiator.leaking }
				//   ^ warning redundant-rule: Rule a adds nothing: whenever it applies, rule b already says the same.
				//   core: line 8 (rule b)
				rule b { given hot then suspects radiator.leaking }
				""");
	}

	@Test
	void aRuleThatIsNeededInOneFamilyStays() {
		MarkedFlaws.check(RedundantRule.class, """
				family osier
				family tarn
				sign hot
				part radiator { fault leaking fault blocked }
				rule a { for osier given hot then suspects radiator.leaking, radiator.blocked }
				rule b { given hot then suspects radiator.leaking }
				""");
	}

	@Test
	void aSecondPointerByAnotherTestIsWorthHaving() {
		MarkedFlaws.check(RedundantRule.class, """
				family osier
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				rule a { given hot then suspects radiator.leaking }
				rule b { given hot run level on low : suspects radiator.leaking on full : proves nothing }
				""");
	}

	@Test
	void theSameTestAskedAgainIsNoSecondPointer() {
		MarkedFlaws.check(RedundantRule.class, """
				family osier
				sign hot
				sign smell
				part radiator { fault leaking }
				test level { results full, low }
				rule a { given hot run level on low : suspects radiator.leaking }
				rule b { given hot, smell run level on low : suspects radiator.leaking }
				//   ^ warning redundant-rule: Rule b adds nothing: whenever it applies, rule a already says the same.
				//   core: line 6 (rule a)
				""");
	}

	@Test
	void inAFamilyWhereItOnlyProvesNothing() {
		MarkedFlaws.check(RedundantRule.class, """
				family tarn
				family heron
				sign hot
				sign smell
				part radiator { fault leaking }
				test level { results full, low }
				law "The Heron has a sealed radiator" for heron : never level is low
				rule lost { given hot run level on low : confirms radiator.leaking on full : proves nothing }
				rule smells { given hot, smell run level on low : confirms radiator.leaking on full : proves nothing }
				//   ^^^^^^ warning redundant-rule: Rule smells adds nothing: whenever it applies, rule lost already says the same.
				//   core: line 8 (rule lost)
				""");
	}

	@Test
	void oneSetOfRulesForAllThatItSays() {
		MarkedFlaws.check(RedundantRule.class, """
				family tarn
				sign hot
				part radiator { fault leaking }
				part hose { fault split }
				test level { results full, low }
				test look { results dry, damp }
				rule a { given hot run level on low : suspects radiator.leaking }
				//   ^ warning redundant-rule: Rule a adds nothing: whenever it applies, rule b already says the same.
				//   core: line 10 (rule b)
				rule b { given hot run level on low : suspects hose.split suspects radiator.leaking }
				rule c { given hot, look is damp run level on low : suspects hose.split suspects radiator.leaking }
				//   ^ warning redundant-rule: Rule c adds nothing: whenever it applies, rule b already says the same.
				//   core: line 10 (rule b)
				rule d { given hot, look is dry then suspects hose.split }
				""");
	}

	@Test
	void eachFamilyIsToldItsOwnReason() {
		MarkedFlaws.check(RedundantRule.class, """
				family tarn
				family heron
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				rule a { for tarn given hot run level on low : confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule a adds nothing: whenever it applies, rule c already says the same.
				//   core: line 12 (rule c)
				rule b { for heron given hot run level on low : confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule b adds nothing: whenever it applies, rule c already says the same.
				//   core: line 12 (rule c)
				rule c { given hot, level is low then confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule c adds nothing: whenever it applies, rule a already says the same (family tarn); whenever it applies, rule b already says the same (family heron).
				//   core: line 6 (rule a (family tarn)), line 9 (rule b (family heron))
				""");
	}
}
