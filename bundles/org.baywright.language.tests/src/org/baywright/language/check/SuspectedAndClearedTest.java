package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.SuspectedAndCleared;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Replay;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.api.Test;

/** {@link SuspectedAndCleared}: a softer "conflict" (Suwa, Scott and Shortliffe 1982), between evidence of equal strength. */
class SuspectedAndClearedTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(SuspectedAndCleared.class);
		assertShows(rules, rules.only(SuspectedAndCleared.class), "hub.bearing_worn", "hum_changes", "play_in_hub");
	}

	private static void assertShows(MarkedFlaws rules, Flaw flaw, String fault, String... fired) {
		CaseResult result = Replay.assertShows(rules, flaw, seen -> Replay.says(seen, VerdictKind.SUSPECTED, fault)
				&& Replay.says(seen, VerdictKind.CLEARED, fault));
		assertTrue(result.fired().containsAll(List.of(fired)), result::toString);
	}

	@Test
	void aRuleThatKnowsOfTheSuspicionIsStronger() {
		MarkedFlaws.check(SuspectedAndCleared.class, """
				family heron
				sign hum
				part hub { fault worn }
				test sway { results changes, stays }
				test play { results none, felt }
				rule a { given hum run sway on changes : suspects hub.worn }
				rule b { given hum, hub.worn suspected run play on none : clears hub.worn }
				""");
	}

	@Test
	void aTestIsStrongerThanSignsAlone() {
		MarkedFlaws.check(SuspectedAndCleared.class, """
				family heron
				sign hum
				sign shake
				part hub { fault worn }
				test play { results none, felt }
				rule a { given hum, shake then suspects hub.worn }
				rule b { given hum run play on none : clears hub.worn }
				""");
	}

	@Test
	void signsAgainstSignsAreFound() {
		MarkedFlaws rules = MarkedFlaws.check(SuspectedAndCleared.class, """
				family heron
				sign hum
				sign shake
				part hub { fault worn }
				rule a { given hum then suspects hub.worn }
				//                 ^^^^ warning suspected-and-cleared: Rule a suspects hub.worn (worn) and rule b clears it in the same situation, on equally strong evidence; let the weaker of them prove nothing, or rest on a test.
				//   witness: heron; hum; "shake" is not seen
				//   also: line 9 (rule b, then)
				rule b { given shake absent then clears hub.worn }
				""");
		assertShows(rules, rules.only(SuspectedAndCleared.class), "hub.worn", "a", "b");
	}

	@Test
	void twoChainsOfEqualLengthAreFound() {
		MarkedFlaws rules = MarkedFlaws.check(SuspectedAndCleared.class, """
				family heron
				sign hum
				part hub { fault worn fault loose }
				test sway { results changes, stays }
				test play { results none, felt }
				test spin { results rough, smooth }
				rule a { given hum run sway on changes : suspects hub.loose }
				rule b { given hub.loose suspected run play on felt : suspects hub.worn }
				//                                          ^^^^^^^ warning suspected-and-cleared: Rule b, which builds on rule a, suspects hub.worn (worn) and rule c, which builds on rule a, clears it in the same situation, on equally strong evidence; if the second counts more, let it ask for hub.worn suspected.
				//   witness: heron; hum; play: felt; spin: smooth; sway: changes
				//   also: line 12 (rule c, on smooth), line 7 (rule a, on changes)
				rule c { given hub.loose suspected run spin on smooth : clears hub.worn }
				""");
		assertShows(rules, rules.only(SuspectedAndCleared.class), "hub.worn", "a", "b", "c");
	}

	@Test
	void goingRoundAddsNothingWhateverTheRulesAreCalled() {
		MarkedFlaws.check(SuspectedAndCleared.class, """
				family tarn
				sign hot
				part pump { fault dry }
				part belt { fault worn }
				test level { results full, low }
				test grip { results firm, loose }
				test noise { results quiet, loud }
				test smell { results none, sweet }
				rule a { given hot run level on low : suspects pump.dry }
				rule b { given pump.dry suspected run grip on loose : suspects belt.worn }
				rule c { given belt.worn suspected run noise on loud : suspects pump.dry }
				rule d { given pump.dry suspected run smell on none : clears belt.worn }
				""");
	}
}
