package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.baywright.analysis.check.UnreachableConclusion;
import org.baywright.language.testing.Cores;
import org.baywright.language.testing.MarkedFindings;
import org.junit.jupiter.api.Test;

/**
 * {@link UnreachableConclusion}: the "unusable" consequents and missing rules of Preece and Shinghal 1994 (redundancy and
 * deficiency).
 */
class UnreachableConclusionTest {

	@Test
	void theFlawedFile() {
		MarkedFindings rules = MarkedFindings.checkFlawed(UnreachableConclusion.class);
		String found = rules.only(UnreachableConclusion.class).id();
		String answered = rules.text() + """
				rule wire { given click_only run contact_drop on at_most 0.2 V : clears solenoid.burnt }
				""";
		assertEquals(0, MarkedFindings.of(answered).ids().stream().filter(found::equals).count());
	}

	@Test
	void aChainThatCannotBegin() {
		MarkedFindings rules = MarkedFindings.check("""
				family tarn
				sign no_crank
				part starter { fault worn }
				//                   ^^^^ warning unfound-fault: No rule can ever confirm starter.worn (worn); write a rule that confirms it by a test.
				test drop { measures V 0 .. 12 step 0.1 }
				//   ^^^^ warning unused-result: No rule uses test drop; write a rule for it, or take it out.
				rule first {
				//   ^^^^^ warning dead-rule: Rule first can never fire: what it asks for cannot all be true.
				//   core: line 10 (rule first)
				  given no_crank, starter.worn suspected
				//                ^^^^^^^^^^^^^^^^^^^^^^ warning unreachable-conclusion: A rule asks whether starter.worn (worn) is suspected, but no rule ever says so; add that rule, or take the question out.
				  run drop
				  expect at_most 0.5 V
				  met   : clears starter.worn
				//               ^^^^^^^^^^^^ warning unreachable-conclusion: No situation leads to the verdict that starter.worn (worn) is cleared: every rule that says so is dead or waits for itself.
				//   core: line 10 (rule first)
				  above : confirms starter.worn
				//                 ^^^^^^^^^^^^ warning unreachable-conclusion: No situation leads to the verdict that starter.worn (worn) is confirmed: every rule that says so is dead or waits for itself.
				//   core: line 10 (rule first)
				}
				rule rest { given no_crank unexplained then refers "the starter specialist" }
				""");
		Cores.assertMinimal(rules, rules.of(UnreachableConclusion.class).get(1), Map.of());
	}

	@Test
	void onlyDeadRulesSaySo() {
		MarkedFindings rules = MarkedFindings.check(UnreachableConclusion.class, """
				family tarn
				sign no_crank
				part starter { fault worn fault loose }
				test drop { measures V 0 .. 12 step 0.1 }
				rule first {
				  given drop above 0.5 V,
				    drop below 0.3 V
				  then suspects starter.worn
				//              ^^^^^^^^^^^^ warning unreachable-conclusion: No situation leads to the verdict that starter.worn (worn) is suspected: every rule that says so is dead or waits for itself.
				//   core: line 6 (rule first), line 7 (rule first)
				//   also: line 14 (rule second asks for it)
				}
				rule second {
				  given starter.worn not suspected
				  run drop
				  on above 0.5 V : confirms starter.loose
				}
				""");
		Cores.assertMinimal(rules, rules.only(UnreachableConclusion.class), Map.of());
	}

	@Test
	void aReferralThatNothingLeadsTo() {
		MarkedFindings rules = MarkedFindings.check(UnreachableConclusion.class, """
				family tarn
				sign no_crank
				test drop { measures V 0 .. 12 step 0.1 }
				rule first {
				  given drop above 0.5 V,
				    drop below 0.3 V
				  then refers "the starter specialist"
				//     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning unreachable-conclusion: No situation leads to a referral to the starter specialist: every rule that says so is dead or waits for itself.
				//   core: line 5 (rule first), line 6 (rule first)
				}
				""");
		Cores.assertMinimal(rules, rules.only(UnreachableConclusion.class), Map.of());
	}

	@Test
	void oneFamilyInWhichItIsReachedIsEnough() {
		MarkedFindings.check(UnreachableConclusion.class, """
				family tarn
				family heron
				sign no_crank
				part starter { fault worn }
				test drop { measures V 0 .. 12 step 0.1 }
				rule first { for heron given no_crank then suspects starter.worn }
				rule second { given starter.worn suspected run drop on above 0.5 V : confirms starter.worn }
				""");
	}
}
