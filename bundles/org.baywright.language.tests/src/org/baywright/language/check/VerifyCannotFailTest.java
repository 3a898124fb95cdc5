package org.baywright.language.check;

import org.baywright.analysis.check.VerifyCannotFail;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link VerifyCannotFail}: a check that cannot fail finds no mistake; common practice. */
class VerifyCannotFailTest {

	private static final String HEATER = """
			family dunlin
			state ignition : off, on
			module heater answers in ignition on
			code open on heater = raw "H 13"
			sign no_heat
			sign cold_air
			part element { fault open }
			test ohms { measures Ohm 0 .. 200 step 1 }
			test fan { results runs, stands }
			law "Cold air comes from a fan that runs" : when cold_air then fan is runs
			rule a { given no_heat, cold_air run ohms on below 40 Ohm : proves nothing on at_least 40 Ohm : confirms element.open }
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifyCannotFail.class);
	}

	@Test
	void whatIsSoBeforeTheRepairProvesNothing() {
		MarkedFlaws.check(VerifyCannotFail.class, HEATER + """
				repair new_element { fixes element.open steps "Replace it." verify { repeat fan expect runs expect cold_air present } }
				//     ^^^^^^^^^^^ warning verify-cannot-fail: The verification of repair new_element expects only what is so on every vehicle on which rules confirm element.open (open), so it passes without the repair; add "repeat what confirmed".
				""");
	}

	@Test
	void oneThingThatMayBeOtherwiseIsEnough() {
		MarkedFlaws.check(VerifyCannotFail.class, HEATER + """
				repair by_code { fixes element.open steps "Replace it." verify { repeat fan expect runs read heater expect open absent } }
				repair by_sign { fixes element.open steps "Replace it." verify { repeat fan expect runs expect no_heat absent } }
				repair by_test { fixes element.open steps "Replace it." verify { repeat ohms expect below 40 Ohm } }
				repair by_all { fixes element.open steps "Replace it." verify { repeat what confirmed } }
				""");
	}

	@Test
	void ofAFaultThatNothingConfirmsThereIsNothingToSay() {
		MarkedFlaws.check(VerifyCannotFail.class, HEATER.replace("confirms element.open", "suspects element.open") + """
				repair new_element { fixes element.open steps "Replace it." verify { repeat fan expect runs } }
				""");
	}

	@Test
	void onlyVehiclesThatTheRepairIsForCount() {
		MarkedFlaws.check(VerifyCannotFail.class, """
				family dunlin { trait heat : water, ptc }
				sign no_heat
				part element { fault open }
				test ohms { measures Ohm 0 .. 200 step 1 }
				test fan { results runs, stands }
				law "Without a pump the fan runs" : when no_heat, heat is ptc then fan is runs
				rule a { given no_heat run ohms on at_least 40 Ohm : confirms element.open }
				repair with_ptc { for dunlin where heat is ptc fixes element.open steps "Replace it." verify { repeat fan expect runs } }
				//     ^^^^^^^^ warning verify-cannot-fail: The verification of repair with_ptc expects only what is so on every vehicle on which rules confirm element.open (open), so it passes without the repair; add "repeat what confirmed".
				repair either { fixes element.open steps "Replace it." verify { repeat fan expect runs } }
				""");
	}
}
