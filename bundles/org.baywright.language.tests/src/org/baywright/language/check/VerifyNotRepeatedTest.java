package org.baywright.language.check;

import org.baywright.analysis.check.VerifyNotRepeated;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link VerifyNotRepeated}: common practice: what showed the fault has to show that it is gone. */
class VerifyNotRepeatedTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifyNotRepeated.class);
	}

	@Test
	void theTestAloneIsEnough() {
		MarkedFlaws.check(VerifyNotRepeated.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    repeat resistance
				  }
				}
				""");
	}

	@Test
	void whatConfirmedStandsForTheTest() {
		MarkedFlaws.check(VerifyNotRepeated.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    repeat what confirmed
				  }
				}
				""");
	}

	@Test
	void aCodeThatConfirmedIsLookedForAgain() {
		MarkedFlaws.check(VerifyNotRepeated.class, """
				family dunlin
				state ignition : off, on
				module heater
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open fault loose }
				rule a { given no_heat, open present then confirms element.open }
				rule b { given no_heat, low present then confirms element.loose }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify { clear heater  cycle ignition  read heater  expect open absent }
				}
				repair fix_element {
				//     ^^^^^^^^^^^ warning verify-not-repeated: The verification of repair fix_element does not repeat low, which confirmed the fault; add "repeat what confirmed".
				//   also: line 10 (rule b confirms it)
				  fixes element.open, element.loose
				  steps "Fix it."
				  verify { clear heater  cycle ignition  read heater  expect open absent }
				}
				""");
	}

	@Test
	void eachTestThatCanConfirmIsNamed() {
		MarkedFlaws.check(VerifyNotRepeated.class, """
				family dunlin
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1 }
				test current { measures A 0 .. 40 step 1 }
				test look { results fine, burnt }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				rule b { given no_heat run current expect above 2 A met : proves nothing otherwise : confirms element.open }
				rule c { given no_heat run look on burnt : confirms element.open }
				repair new_element { fixes element.open steps "Replace it." verify { repeat look } }
				//     ^^^^^^^^^^^ warning verify-not-repeated: The verification of repair new_element does not repeat current, resistance, which confirmed the fault; add "repeat what confirmed".
				//   also: line 7 (rule a confirms it), line 8 (rule b confirms it)
				""");
	}

	@Test
	void aDeadRuleConfirmsNothing() {
		MarkedFlaws.check(VerifyNotRepeated.class, """
				family tarn
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				test smell { results none, sweet }
				law "Nothing smells here" : never smell is sweet
				rule a { given hot run level on low : confirms radiator.leaking }
				rule b { given hot run smell on sweet : confirms radiator.leaking }
				repair r { fixes radiator.leaking steps "Replace it." verify { repeat level expect full } }
				""");
	}

	@Test
	void whatConfirmsOnOtherVehiclesIsNotRepeated() {
		MarkedFlaws.check(VerifyNotRepeated.class, """
				family tarn
				family lark
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				test smell { results none, sweet }
				rule a { for tarn given hot run level on low : confirms radiator.leaking }
				rule b { for lark given hot run smell on sweet : confirms radiator.leaking }
				repair for_tarn { for tarn fixes radiator.leaking steps "Replace it." verify { repeat level expect full } }
				repair for_lark { for lark fixes radiator.leaking steps "Replace it." verify { repeat level expect full } }
				//     ^^^^^^^^ warning verify-not-repeated: The verification of repair for_lark does not repeat smell, which confirmed the fault; add "repeat what confirmed".
				//   also: line 8 (rule b confirms it)
				""");
	}
}
