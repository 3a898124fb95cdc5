package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.baywright.analysis.check.UnreachableConclusion;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link UnreachableConclusion}: the "unusable" consequents and missing rules of Preece and Shinghal 1994 (redundancy and
 * deficiency).
 */
class UnreachableConclusionTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(UnreachableConclusion.class);
		String found = rules.only(UnreachableConclusion.class).id();
		String answered = rules.text() + """
				rule wire { given click_only run contact_drop on at_most 0.2 V : clears solenoid.burnt }
				""";
		assertEquals(0, MarkedFlaws.of(answered).ids().stream().filter(found::equals).count());
	}

	@Test
	void aChainThatCannotBegin() {
		MarkedFlaws.check("""
				family tarn
				sign no_crank
				part starter { fault worn }
				test drop { measures V 0 .. 12 step 0.1 }
				//   ^^^^ warning unused-result: No rule uses test drop; write a rule for it, or take it out.
				rule first {
				//   ^^^^^ warning dead-rule: Rule first can never apply: what it asks for cannot all be true. So nothing ever confirms starter.worn, or clears starter.worn.
				//   core: line 9 (rule first)
				  given no_crank, starter.worn suspected
				//                ^^^^^^^^^^^^^^^^^^^^^^ warning unreachable-conclusion: A rule asks whether starter.worn (worn) is suspected, but no rule ever says so; add that rule, or take the question out.
				  run drop
				  expect at_most 0.5 V
				  met   : clears starter.worn
				  above : confirms starter.worn
				}
				rule rest { given no_crank unexplained then refers "the starter specialist" }
				""");
	}

	@Test
	void whatOnlyDeadRulesSayIsToldWithThem() {
		MarkedFlaws.check(UnreachableConclusion.class, """
				family tarn
				sign no_crank
				part starter { fault worn fault loose }
				test drop { measures V 0 .. 12 step 0.1 }
				rule first {
				  given drop above 0.5 V,
				    drop below 0.3 V
				  then suspects starter.worn
				}
				rule second {
				  given starter.worn not suspected
				  run drop
				  on above 0.5 V : confirms starter.loose
				}
				""");
	}

	@Test
	void soIsAReferralThatNothingLeadsTo() {
		MarkedFlaws.check(UnreachableConclusion.class, """
				family tarn
				sign no_crank
				test drop { measures V 0 .. 12 step 0.1 }
				rule first {
				  given drop above 0.5 V,
				    drop below 0.3 V
				  then refers "the starter specialist"
				}
				""");
	}

	@Test
	void oneFamilyInWhichItIsReachedIsEnough() {
		MarkedFlaws.check(UnreachableConclusion.class, """
				family tarn
				family heron
				sign no_crank
				part starter { fault worn }
				test drop { measures V 0 .. 12 step 0.1 }
				rule first { for heron given no_crank then suspects starter.worn }
				rule second { given starter.worn suspected run drop on above 0.5 V : confirms starter.worn }
				""");
	}

	@Test
	void whatIsAskedInOneLineIsToldOnce() {
		MarkedFlaws.check(UnreachableConclusion.class, """
				family tarn
				sign no_crank
				part starter { fault worn fault loose fault dirty }
				rule second {
				  given no_crank, starter.worn suspected, starter.loose suspected, starter.dirty cleared
				//                                        ^^^^^^^^^^^^^^^^^^^^^^^ warning unreachable-conclusion: A rule asks whether starter.loose (loose) and starter.worn (worn) are suspected, but no rule ever says so; add that rule, or take the question out.
				//                                                                 ^^^^^^^^^^^^^^^^^^^^^ warning unreachable-conclusion: A rule asks whether starter.dirty (dirty) is cleared, but no rule ever says so; add that rule, or take the question out.
				  then refers "the starter specialist"
				}
				""");
	}
}
