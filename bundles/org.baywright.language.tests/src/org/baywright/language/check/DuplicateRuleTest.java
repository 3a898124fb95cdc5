package org.baywright.language.check;

import org.baywright.analysis.check.DuplicateRule;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link DuplicateRule}, the "duplicate rule" of Preece and Shinghal 1994. */
class DuplicateRuleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(DuplicateRule.class);
	}

	@Test
	void anotherLimitIsAnotherMeaning() {
		MarkedFlaws.check(DuplicateRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a { given no_crank run rest on below 12.4 V : confirms battery.flat }
				rule b { given no_crank run rest on below 12300 mV : confirms battery.flat }
				""");
	}

	@Test
	void orderNegationAndOutcomesDoNotHideTheMeaning() {
		MarkedFlaws.check(DuplicateRule.class, """
				family tarn { trait engine : diesel, petrol, electric }
				sign no_crank
				sign click
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a {
				  for tarn where engine is diesel or engine is petrol
				  given no_crank, click
				  run rest
				  on below 6 V : suspects battery.flat suspects battery.open_cell
				}
				rule b {
				//   ^ warning duplicate-rule: Rule b means the same as rule a; keep one of them.
				//   also: line 6 (rule a)
				  given click, not (no_crank absent)
				  for tarn where engine is not electric
				  run rest
				  on below 3 V    : suspects battery.open_cell, battery.flat
				  on 3 V .. 5.9 V : suspects battery.flat, battery.open_cell
				}
				""");
	}

	@Test
	void whatALawImpliesIsNotYetSeen() {
		MarkedFlaws.check(DuplicateRule.class, """
				family tarn
				sign no_crank
				sign dark
				part battery { fault flat }
				law "Without current no light" : when no_crank then dark
				rule a { given no_crank then suspects battery.flat }
				rule b { given no_crank, dark then suspects battery.flat }
				""");
	}

	@Test
	void rulesThatDifferInOneFamilyAreBothNeeded() {
		MarkedFlaws.check(DuplicateRule.class, """
				family tarn
				family heron
				sign no_crank
				part battery { fault flat }
				rule a { for tarn given no_crank then suspects battery.flat }
				rule b { for tarn, heron given no_crank then suspects battery.flat }
				""");
	}

	@Test
	void aRuleThatOnlyRepeatsAnotherIsNoTwinOfIt() {
		MarkedFlaws.check("""
				family osier
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				rule a { given radiator.leaking confirmed then confirms radiator.leaking }
				//   ^ warning redundant-rule: Rule a adds nothing: it says only what it waits for.
				//                                                      ^^^^^^^^^^^^^^^^ warning confirmed-without-test: Rule a confirms radiator.leaking (leaking) without a test; add the test that proves it, or let the rule suspect it.
				rule b { given hot run level on low : confirms radiator.leaking otherwise : refers "the engine specialist" }
				repair r { fixes radiator.leaking steps "Replace it." verify { repeat what confirmed } }
				""");
	}

	@Test
	void rulesWhoseSpeakingOutcomesAreAllDeadAreNoTwins() {
		MarkedFlaws.check(DuplicateRule.class, """
				family osier
				sign hot
				sign cold
				part radiator { fault leaking }
				test level { results full, low }
				test noise { results quiet, loud }
				law "A radiator on this van is never seen low" : never level is low
				law "Nor is it ever loud" : never noise is loud
				rule a { given hot run level on low : confirms radiator.leaking on full : proves nothing }
				rule b { given cold run noise on loud : confirms radiator.leaking on quiet : proves nothing }
				""");
	}

	@Test
	void anyNumberOfEqualRulesIsToldOnce() {
		MarkedFlaws.check(DuplicateRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule c { given no_crank run rest on below 12.4 V : confirms battery.flat }
				rule a { given no_crank run rest on below 12.4 V : confirms battery.flat }
				//   ^ warning duplicate-rule: Rules a, d and b mean the same as rule c; keep one of them.
				//   also: line 5 (rule c), line 9 (rule d), line 10 (rule b)
				rule d { given no_crank run rest on below 12400 mV : confirms battery.flat }
				rule b { given no_crank, rest below 12.4 V then confirms battery.flat }
				""");
	}
}
