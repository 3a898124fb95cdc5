package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.check.TwoEnds;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Replay;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.api.Test;

/** {@link TwoEnds}: an "ambivalence" of ends (Preece and Shinghal 1994): the job is both closed and passed on. */
class TwoEndsTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(TwoEnds.class);
		Replay.assertShows(rules, rules.only(TwoEnds.class),
				seen -> Replay.says(seen, VerdictKind.CONFIRMED, "steering.leak") && seen.fired().contains("pump_loud")
						&& Replay.refers(seen, "the pump specialist"));
	}

	@Test
	void aReferralOfWhatIsUnexplainedIsFine() {
		MarkedFlaws.check(TwoEnds.class, """
				family heron
				sign heavy
				part steering { fault leak }
				test fluid { results full, low }
				test noise { results quiet, loud }
				rule a { given heavy run fluid on low : confirms steering.leak }
				rule b { given heavy unexplained run noise on loud : refers "the pump specialist" }
				""");
	}

	@Test
	void rulesWithoutACommonSignAnswerDifferentComplaints() {
		MarkedFlaws.check(TwoEnds.class, """
				family heron
				sign heavy
				sign squeal
				part steering { fault leak }
				test fluid { results full, low }
				test noise { results quiet, loud }
				rule a { given heavy run fluid on low : confirms steering.leak }
				rule b { given squeal run noise on loud : refers "the pump specialist" }
				""");
	}

	@Test
	void twoReferralsAreFoundAlsoThroughAChain() {
		MarkedFlaws rules = MarkedFlaws.check(TwoEnds.class, """
				family heron
				sign heavy
				part steering { fault leak }
				test fluid { results full, low }
				test noise { results quiet, loud }
				rule a { given heavy run fluid on low : suspects steering.leak }
				rule b { given steering.leak suspected then refers "the hose maker" }
				//                                     ^^^^ warning two-ends: Rule b, which builds on rule a, refers the job to the hose maker and rule c brings the same complaint to another end in the same situation; let the one that refers ask that the sign is unexplained.
				//   witness: heron; heavy; fluid: low; noise: loud
				//   also: line 11 (rule c, on loud), line 6 (rule a, on low)
				rule c { given heavy run noise on loud : refers "the pump specialist" }
				""");
		CaseResult result = Replay.assertShows(rules, rules.only(TwoEnds.class),
				seen -> Replay.refers(seen, "the hose maker") && Replay.refers(seen, "the pump specialist"));
		assertTrue(result.fired().contains("a"), result::toString);
	}

	@Test
	void aSuspicionThatHasTwoPossibleSigns() {
		MarkedFlaws.check(TwoEnds.class, """
				family heron
				sign heavy "Steering is heavy"
				sign noisy "Steering is noisy"
				part steering { fault leak }
				test fluid { results full, low }
				test noise { results quiet, loud }
				rule a { given heavy then suspects steering.leak }
				rule b { given noisy then suspects steering.leak }
				rule c { given steering.leak suspected run fluid on low : confirms steering.leak }
				rule d { given heavy run noise on loud : refers "the pump specialist" }
				//                             ^^^^^^^ warning two-ends: Rule d refers the job to the pump specialist and rule c, which builds on rule a, brings the same complaint to another end in the same situation; let the one that refers ask that the sign is unexplained.
				//   witness: heron; Steering is heavy; fluid: low; noise: loud
				//   also: line 9 (rule c, on low), line 7 (rule a, then)
				""");
	}
}
