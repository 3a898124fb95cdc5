package org.baywright.language.check;

import org.baywright.analysis.check.UnusedResult;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link UnusedResult}: the "unusable" and "missing" values of Preece and Shinghal 1994 (deficiency). */
class UnusedResultTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(UnusedResult.class);
	}

	@Test
	void aConditionUsesAResultToo() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test lamp { results dark, dim, lit }
				rule a { given slow run lamp on dark : confirms battery.worn on lit : proves nothing }
				rule b { given lamp is dim then suspects battery.worn }
				""");
	}

	@Test
	void measuredValuesThatNoRuleUses() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				//   ^^^^^^^^ warning unused-result: No rule uses the result 1.9 V or less or 12.1 V or more of test cranking; say what it proves, or that it proves nothing.
				rule bands { given slow run cranking on 2 V .. 9.5 V : confirms battery.worn on 9.6 V .. 12 V : clears battery.worn }
				""");
	}

	@Test
	void aTestThatNoRuleUses() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test lamp { results dark, lit }
				//   ^^^^ warning unused-result: No rule uses test lamp; write a rule for it, or take it out.
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking expect at_least 9.6 V met : clears battery.worn below : confirms battery.worn }
				""");
	}

	@Test
	void aDeadRuleUsesNothing() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test lamp { results dark, lit }
				//   ^^^^ warning unused-result: No rule uses test lamp; write a rule for it, or take it out.
				rule a { given slow, slow absent run lamp on dark : confirms battery.worn on lit : clears battery.worn }
				""");
	}

	@Test
	void aConditionThatTakesEveryResultUsesNone() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test lamp { results dark, lit }
				//   ^^^^ warning unused-result: No rule uses test lamp; write a rule for it, or take it out.
				rule a { given slow, lamp is any of (dark, lit) then suspects battery.worn }
				""");
	}

	@Test
	void whatHasToBeDoneToSeeAnotherResultIsNotToBeTakenOut() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part alternator { fault dead }
				test charging { results low, good }
				test course { results steady, falling  seen_with charging }
				rule a { given slow run course on falling : confirms alternator.dead on steady : clears alternator.dead }
				""");
	}

	@Test
	void whatAVerificationRepeatsIsNotToBeTakenOut() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test lamp { results dark, lit }
				test road { results good, bad }
				rule a { given slow run lamp on dark : confirms battery.worn on lit : clears battery.worn }
				repair renew { fixes battery.worn steps "Renew it." verify { repeat road expect good } }
				""");
	}

	@Test
	void notAUsesTheOthersAndAnOutcomeForAllUsesAll() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				test smell { results none, sweet, burnt }
				//   ^^^^^ warning unused-result: No rule uses the result none of test smell; say what it proves, or that it proves nothing.
				test noise { results quiet, loud }
				//   ^^^^^ warning unused-result: No rule uses test noise; write a rule for it, or take it out.
				rule a { given hot, not (smell is none) run level on full, low : suspects radiator.leaking }
				rule b { for tarn except tarn given hot run noise on loud : suspects radiator.leaking on quiet : proves nothing }
				""");
	}

	@Test
	void whatLiesBetweenTheBandsOfARuleIsToldWithTheRule() {
		MarkedFlaws.check(UnusedResult.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				//   ^^^^^^^^ warning unused-result: No rule uses the result 1.9 V or less or 12.1 V or more of test cranking; say what it proves, or that it proves nothing.
				test resting { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on 2 V .. 9.5 V : confirms battery.worn on 9.8 V .. 12 V : clears battery.worn }
				rule b { given slow run resting on at_most 9.5 V : confirms battery.worn on at_least 9.8 V : clears battery.worn }
				""");
	}
}
