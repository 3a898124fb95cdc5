package org.baywright.language.check;

import org.baywright.analysis.check.DearTest;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link DearTest}: the cheap quick test comes before the dear one; common practice. */
class DearTestTest {

	private static final String HEATER = """
			family dunlin { trait built : 2015 .. 2020 }
			sign no_heat
			sign smells
			part element { fault open }
			part box { fault loose }
			tool camera cost 40
			test ohms { measures Ohm 0 .. 200 step 1 takes 5 min }
			test look { results whole, burnt takes 5 min needs camera }
			rule cheap { given no_heat run ohms on below 40 Ohm : clears element.open on at_least 40 Ohm : confirms element.open }
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(DearTest.class);
	}

	@Test
	void toolsCostToo() {
		MarkedFlaws.check(DearTest.class, HEATER + """
				rule dear { given no_heat, smells run look on whole : clears element.open on burnt : confirms element.open }
				//                                    ^^^^ warning dear-test: Rule dear runs "look", but whenever it applies rule cheap decides the same by "ohms", which is cheaper; let the rule wait for what that leaves open, or take it out.
				//   also: line 9 (rule cheap runs the cheaper test)
				""");
	}

	@Test
	void aRuleThatAppliesWhereTheOtherDoesNotIsNeeded() {
		MarkedFlaws.check(DearTest.class, HEATER + """
				rule dear { given smells run look on whole : clears element.open on burnt : confirms element.open }
				""");
	}

	@Test
	void aRuleThatSaysMoreIsNeeded() {
		MarkedFlaws.check(DearTest.class, HEATER + """
				rule dear { given no_heat run look on whole : clears element.open on burnt : confirms element.open suspects box.loose }
				rule other { given no_heat run look on whole : clears element.open, box.loose on burnt : confirms element.open }
				""");
	}

	@Test
	void whatTheCheapTestLeavesOpenIsWorthIts() {
		MarkedFlaws.check(DearTest.class, HEATER.replace("on at_least 40 Ohm : confirms element.open", "on at_least 40 Ohm : suspects element.open") + """
				rule dear { given no_heat run look on whole : clears element.open on burnt : confirms element.open }
				""");
	}

	@Test
	void aRuleThatWaitsUntilTheCheapTestIsDoneIsFine() {
		MarkedFlaws.check(DearTest.class, HEATER + """
				rule dear { given no_heat, element.open not cleared, element.open not confirmed
				  run look on whole : clears element.open on burnt : confirms element.open }
				""");
	}

	@Test
	void theCheaperOneMustNotTakeMoreSkill() {
		MarkedFlaws.check(DearTest.class, HEATER.replace("step 1 takes 5 min", "step 1 takes 5 min skill licensed") + """
				rule dear { given no_heat run look on whole : clears element.open on burnt : confirms element.open }
				""");
	}

	@Test
	void itMustBeSoInEveryFamily() {
		MarkedFlaws.check(DearTest.class, HEATER.replace("rule cheap {", "family plover rule cheap { for dunlin") + """
				rule dear { given no_heat run look on whole : clears element.open on burnt : confirms element.open }
				""");
	}

	private static final String SEEN = HEATER.replace("rule cheap", "test course { seen_with look results steady, jumps }\nrule cheap");

	@Test
	void whatIsSeenWithATestTakesWhatThatOneTakes() {
		MarkedFlaws.check(DearTest.class, SEEN + """
				rule dear { given no_heat, smells run course on steady : clears element.open on jumps : confirms element.open }
				//                                    ^^^^^^ warning dear-test: Rule dear runs "course", but whenever it applies rule cheap decides the same by "ohms", which is cheaper; let the rule wait for what that leaves open, or take it out.
				//   also: line 10 (rule cheap runs the cheaper test)
				rule same { given no_heat run look on whole : clears box.loose on burnt : confirms box.loose }
				rule watch { given no_heat run course on steady : clears box.loose on jumps : confirms box.loose }
				""");
	}

	@Test
	void whereTheOtherTestIsDoneItTakesNothing() {
		MarkedFlaws.check(DearTest.class, SEEN + """
				rule free { given no_heat, look is burnt run course on steady : clears element.open on jumps : confirms element.open }
				rule first { given no_heat run look on whole : suspects box.loose on burnt : proves nothing }
				rule behind { given no_heat, box.loose suspected run course on steady : clears element.open on jumps : confirms element.open }
				""");
	}

	@Test
	void whatIsSeenAnywayIsCheaper() {
		MarkedFlaws.check(DearTest.class, SEEN.substring(0, SEEN.indexOf("rule cheap")) + """
				rule plain { given no_heat, look is burnt run ohms on below 40 Ohm : clears element.open on at_least 40 Ohm : confirms element.open }
				//                                            ^^^^ warning dear-test: Rule plain runs "ohms", but whenever it applies rule watch decides the same by "course", which is seen with "look", done already; let the rule wait for what that leaves open, or take it out.
				//   also: line 13 (rule watch runs the cheaper test)
				rule watch { given no_heat, look is burnt run course on steady : clears element.open on jumps : confirms element.open }
				""");
	}
}
