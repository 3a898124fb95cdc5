package org.baywright.language.check;

import org.baywright.analysis.check.VerifyExpectsFault;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link VerifyExpectsFault}: common practice: what showed the fault cannot show that it is gone. */
class VerifyExpectsFaultTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifyExpectsFault.class);
	}

	@Test
	void aSwapForAKnownGoodPartSaysNothingAfterwards() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family lark
				sign no_start
				part start_relay { fault sticks }
				test relay_swap { results cranks, no_change }
				test start { results cranks, quiet }
				rule swapped { given no_start run relay_swap on cranks : confirms start_relay.sticks }
				repair new_relay {
				  fixes start_relay.sticks
				  verify { repeat relay_swap expect cranks }
				//         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair new_relay passes with "cranks" in test relay_swap, at which rule swapped confirms start_relay.sticks (sticks); repeat what the customer complained of instead.
				//   witness: lark; no_start; relay_swap: cranks
				//   also: line 6 (rule swapped confirms it)
				}
				repair clean_relay {
				  fixes start_relay.sticks
				  verify { repeat start expect cranks  repeat relay_swap expect no_change }
				}
				""");
	}

	@Test
	void theLeastValueIsNamed() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family lark
				sign no_start
				part strap { fault loose  fault corroded }
				test ground_drop { measures V 0 .. 5 step 0.01 }
				rule drop { given no_start run ground_drop expect at_most 0.3 V met : clears strap.loose above : confirms strap.loose, strap.corroded }
				rule high_drop { given no_start run ground_drop on above 0.4 V : confirms strap.loose }
				repair some { fixes strap.loose, strap.corroded verify { repeat ground_drop expect at_most 0.5 V } }
				//                                                       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair some passes with 0.31 V in test ground_drop, at which rule drop confirms strap.corroded (corroded) and strap.loose (loose); expect only results at which no rule confirms it.
				//   witness: lark; no_start; ground_drop: 0.31 V
				//   also: line 5 (rule drop confirms it), line 6 (rule high_drop confirms it)
				repair all { fixes strap.loose verify { repeat ground_drop expect above 0.4 V } }
				//                                      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair all passes with 0.41 V in test ground_drop, at which rules drop and high_drop confirm strap.loose (loose); expect only results at which no rule confirms it.
				//   witness: lark; no_start; ground_drop: 0.41 V
				//   also: line 5 (rule drop confirms it), line 6 (rule high_drop confirms it)
				repair right { fixes strap.loose verify { repeat ground_drop expect at_most 0.3 V } }
				repair last { fixes strap.loose verify { repeat ground_drop expect at_most 0.5 V  repeat ground_drop expect at_most 0.3 V } }
				""");
	}

	@Test
	void aCodeThatConfirmsMustNotBeExpected() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family dunlin
				module heater
				code open on heater = raw "H 13"
				sign no_heat
				part element { fault open }
				rule a { given no_heat, open present then confirms element.open }
				repair new_element { fixes element.open verify { clear heater  read heater  expect open present } }
				//                                                                          ^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair new_element passes with code open present, at which rule a confirms element.open (open); expect it absent.
				//   witness: dunlin; no_heat; code open present in heater
				//   also: line 6 (rule a confirms it)
				repair other_element { fixes element.open verify { clear heater  read heater  expect open absent } }
				""");
	}

	@Test
	void theRestOfTheVerificationCounts() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn }
				test brush { measures mm 0 .. 30 step 1 }
				test drive { results moves, stays }
				rule short { given no_drive, drive is stays, brush below 12 mm then confirms motor.brush_worn }
				repair good { fixes motor.brush_worn verify { repeat brush  repeat drive expect moves } }
				repair both { fixes motor.brush_worn verify { repeat drive expect stays  repeat brush expect at_least 12 mm } }
				repair one { fixes motor.brush_worn verify { repeat drive expect stays  repeat brush } }
				//                                           ^^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair one passes with "stays" in test drive, at which rule short confirms motor.brush_worn (brush_worn); repeat what the customer complained of instead.
				//   witness: plover; no_drive; brush: 11 mm; drive: stays
				//   also: line 6 (rule short confirms it)
				""");
	}

	@Test
	void whatOnlyComesBeforeTheTestConfirmsNothing() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn }
				test brush { measures mm 0 .. 30 step 1 }
				test drive { results moves, stays }
				rule short { given no_drive, drive is moves run brush on below 12 mm : confirms motor.brush_worn }
				rule either { given no_drive, (drive is stays or brush below 10 mm) then confirms motor.brush_worn }
				repair new_brushes { fixes motor.brush_worn verify { repeat drive expect moves  repeat what confirmed } }
				""");
	}

	@Test
	void onlyVehiclesThatThereAreCount() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family tarn { trait fuel : petrol, diesel }
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				test smell { results none, sweet }
				law "Nothing smells here" : never smell is sweet
				law "Diesels are always full" : never level is low, fuel is diesel
				rule a { given hot, fuel is diesel run level on low : confirms radiator.leaking }
				rule b { given hot run smell on sweet : confirms radiator.leaking }
				rule c { given hot, fuel is petrol run level on full : confirms radiator.leaking }
				repair r { fixes radiator.leaking verify { repeat level expect low  repeat smell expect sweet } }
				repair s { fixes radiator.leaking verify { repeat level expect full } }
				//                                         ^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair s passes with "full" in test level, at which rule c confirms radiator.leaking (leaking); repeat what the customer complained of instead.
				//   witness: tarn with fuel petrol; hot; level: full
				//   also: line 10 (rule c confirms it)
				""");
	}

	@Test
	void whatClearsTheFaultIsAdvised() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn }
				test look { results good, bad, ugly }
				test swap { results moves, stays fits "A known-good motor" }
				rule look_at { given no_drive run look on good : clears motor.brush_worn on bad : confirms motor.brush_worn }
				rule swapped { given no_drive run swap on stays : clears motor.brush_worn on moves : confirms motor.brush_worn }
				repair one { fixes motor.brush_worn verify { repeat look expect bad } }
				//                                           ^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair one passes with "bad" in test look, at which rule look_at confirms motor.brush_worn (brush_worn); expect "good", which clears the fault.
				//   witness: plover; no_drive; look: bad
				//   also: line 6 (rule look_at confirms it)
				repair other { fixes motor.brush_worn verify { repeat swap expect moves } }
				//                                             ^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair other passes with "moves" in test swap, at which rule swapped confirms motor.brush_worn (brush_worn); repeat what the customer complained of instead.
				//   witness: plover; no_drive; swap: moves
				//   also: line 7 (rule swapped confirms it)
				""");
	}

	@Test
	void onlyVehiclesThatTheRepairIsForCount() {
		MarkedFlaws.check(VerifyExpectsFault.class, """
				family lark { trait fuel : petrol, diesel }
				family tarn
				sign no_start
				part strap { fault loose }
				test ground_drop { measures V 0 .. 5 step 0.01 }
				rule drop { for lark where fuel is petrol given no_start run ground_drop on above 0.3 V : confirms strap.loose }
				rule small_drop { for lark where fuel is diesel given no_start run ground_drop on above 0.2 V : confirms strap.loose }
				rule large_drop { for tarn given no_start run ground_drop on above 0.5 V : confirms strap.loose }
				repair for_petrol { for lark where fuel is petrol fixes strap.loose verify { repeat ground_drop expect at_most 0.3 V } }
				repair for_tarn { for tarn fixes strap.loose verify { repeat ground_drop expect at_most 0.5 V } }
				repair for_lark { for lark fixes strap.loose verify { repeat ground_drop expect at_most 0.3 V } }
				//                                                    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning verify-expects-fault: The verification of repair for_lark passes with 0.21 V in test ground_drop, at which rule small_drop confirms strap.loose (loose); expect only results at which no rule confirms it.
				//   witness: lark with fuel diesel; no_start; ground_drop: 0.21 V
				//   also: line 7 (rule small_drop confirms it)
				""");
	}
}
