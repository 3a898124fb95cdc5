package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.baywright.analysis.check.DisturbedEvidence;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link DisturbedEvidence}: common practice. */
class DisturbedEvidenceTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(DisturbedEvidence.class);
	}

	@Test
	void whatTheRuleIsGivenIsDoneFirst() {
		MarkedFlaws.check(DisturbedEvidence.class, """
				family tarn
				sign no_crank
				part battery { fault flat  fault worn  fault open }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results pass, fail disturbs rest, look }
				test spin { results fast, slow disturbs rest }
				test look { results good, bad }

				rule needs_load { given no_crank, load is fail run rest on below 12 V : confirms battery.flat }
				//                                                 ^^^^ warning disturbed-evidence: Rule needs_load runs test rest after load, which disturbs it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test load)
				rule needs_not_load { given not load is fail run look on bad : confirms battery.open }
				//                                               ^^^^ warning disturbed-evidence: Rule needs_not_load runs test look after load, which disturbs it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test load)
				rule needs_either { given load is fail or spin is slow run rest on below 11 V : confirms battery.flat }
				rule needs_either_of_one { given load is fail or load is pass run rest on below 11 V : confirms battery.flat }
				//                                                                ^^^^ warning disturbed-evidence: Rule needs_either_of_one runs test rest after load, which disturbs it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test load)
				rule both_fail { given not (load is fail or spin is slow) run rest on below 11 V : confirms battery.flat }
				//                                                            ^^^^ warning disturbed-evidence: Rule both_fail runs test rest after load and spin, which disturb it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test load), line 6 (test spin)
				rule one_fails { given not (load is fail, spin is slow) run rest on below 11 V : confirms battery.flat }
				rule other_order { given rest below 12 V run load on fail : confirms battery.worn }
				rule known_before { given load is fail, rest below 12 V run rest on below 9 V : confirms battery.open }
				""");
	}

	@Test
	void verdictsTakeWhatAllRulesTakeThatStateThem() {
		MarkedFlaws.check(DisturbedEvidence.class, """
				family tarn
				sign no_crank
				part battery { fault flat  fault worn  fault open }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results pass, fail disturbs rest, look }
				test spin { results fast, slow disturbs rest }
				test look { results good, bad }

				rule suspects_worn { given no_crank run load on fail : suspects battery.worn }
				rule also_suspects_worn { given load is pass run spin on slow : suspects battery.worn }
				rule suspects_open { given battery.worn suspected run look on bad : suspects battery.open }
				//                                                    ^^^^ warning disturbed-evidence: Rule suspects_open runs test look after load, which disturbs it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test load)
				rule after_chain { given battery.open suspected run rest on below 12 V : confirms battery.flat }
				//                                                  ^^^^ warning disturbed-evidence: Rule after_chain runs test rest after load, which disturbs it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test load)
				rule not_suspected { given no_crank, battery.worn not suspected run rest on below 11 V : confirms battery.flat }
				rule reads_rest { given rest below 12 V run load on fail : suspects battery.flat }
				rule rest_again { given battery.flat suspected run rest on below 9 V : confirms battery.flat }
				""");
	}

	@Test
	void oneRuleWithoutTheTestIsEnough() {
		MarkedFlaws.check(DisturbedEvidence.class, """
				family tarn
				sign no_crank
				part battery { fault flat  fault worn  fault open }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results pass, fail disturbs rest, look }
				test spin { results fast, slow disturbs rest }
				test look { results good, bad }

				rule by_load { given no_crank run load on fail : suspects battery.worn }
				rule by_sign { given no_crank then suspects battery.worn }
				rule then_rest { given battery.worn suspected run rest on below 12 V : confirms battery.flat }
				""");
	}

	@Test
	void aRuleThatIsLeftOutMayDoWithoutTheTest() {
		String rules = """
				family tarn
				sign no_crank
				part battery { fault flat  fault worn }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results pass, fail disturbs rest }
				rule by_load { given no_crank run load on fail : suspects battery.worn }
				rule then_rest { given battery.worn suspected run rest on below 12 V : confirms battery.flat }
				""";
		assertEquals(1, MarkedFlaws.of(rules).of(DisturbedEvidence.class).size());
		assertEquals(0, MarkedFlaws.of(rules + "rule wrong { given nowhere then suspects battery.worn }").of(DisturbedEvidence.class).size());
	}

	@Test
	void whatIsSeenWithATestIsDisturbedAndDisturbsAsThatOneIs() {
		MarkedFlaws.check(DisturbedEvidence.class, """
				family dunlin
				part cell { fault flat fault worn }
				test rest { results low, fine takes 1 min }
				test course { seen_with rest results steady, jumps }
				test crank { results strong, weak takes 1 min disturbs rest }
				test noise { seen_with crank results even, rough }
				rule a { given noise is rough run course on jumps : confirms cell.flat on steady : proves nothing }
				//                                ^^^^^^ warning disturbed-evidence: Rule a runs test course after crank, which disturbs it; run it first, or let it prepare what was disturbed.
				//   also: line 5 (test crank)
				rule b { given rest is low, noise is rough run course on jumps : confirms cell.worn on steady : proves nothing }
				rule c { given course is steady run noise on rough : clears cell.worn on even : proves nothing }
				""");
	}
}
