package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.junit.jupiter.api.Test;

class TestProblemsTest {

	@Test
	void aTestSaysWhatItGives() {
		MarkedText.check("""
				test t1 { takes 1 min }
				     ^^ error test-neither: The test `t1` does not say what it can give. > Add `measures V 0 .. 18 step 0.1`, with your unit and range, or `results` with their names.
				""");
	}

	@Test
	void aTestGivesOneKindOfResult() {
		MarkedText.check("""
				test t1 { measures V 0 .. 1 step 0.1 results good, bad }
				     ^^ error test-both: The test `t1` gives a measured value and named results. > Keep `measures` or `results`; make two tests if both are needed.
				""");
	}

	@Test
	void resultsAreListedOnce() {
		MarkedText.check("""
				test t1 { results good, bad, good }
				                             ^^^^ error value-twice: The test `t1` already has a value `good`. > List each value once.
				""");
	}

	@Test
	void unitsAreKnown() {
		MarkedText.check("""
				test t1 { measures Volts 0 .. 1 step 0.1 }
				                   ^^^^^ error unknown-unit: There is no unit `Volts`. > Did you mean `V`?
				test t2 { measures xyz 0 .. 1 step 0.1 }
				                   ^^^ error unknown-unit: There is no unit `xyz`. > Use a unit such as V, mA, Ohm, bar, degC, min or %.
				test t3 { measures 0 .. 10 step 1 }
				test t4 { measures °C -40 .. 120 step 1 }
				test t5 { measures Ohm/V 0 .. 1000 step 1 }
				test t6 { measures % 0 .. 100 step 1 }
				""");
	}

	@Test
	void rangesAndStepsMakeSense() {
		MarkedText.check("""
				test t1 { measures V 5 .. 1 step 0.1 }
				                     ^ error range-reversed: The range 5 .. 1 ends before it begins. > Write the smaller value first.
				test t2 { measures V 0 .. 1 step 0 }
				                                 ^ error step-zero: A step of 0 tells no two values apart. > Write what the instrument can show, such as 0.1.
				test t3 { measures V 0 .. 1000 step 0.00001 }
				                     ^ error too-many-steps: The range has more than 10000000 steps. > Make the step larger.
				""");
	}

	@Test
	void whatATestNeedsExists() {
		MarkedText.check("""
				test t1 {
				  results good, bad
				  at batery
				     ^^^^^^ error unknown-name: There is no part `batery`. > Did you mean `battery`?
				  needs multimeter, clampp
				                    ^^^^^^ error unknown-name: There is no tool `clampp`. > Did you mean `clamp`?
				  in ignition on, lift upp
				                       ^^^ error unknown-value: The state `lift` has no value `upp`. > Did you mean `up`?
				  caution charging_gass
				          ^^^^^^^^^^^^^ error unknown-name: There is no hazard `charging_gass`. > Did you mean `charging_gas`?
				  disturbs rest_volts, engine, battery.open_cell, no_crank
				           ^^^^^^^^^^ error unknown-name: There is no sign, test, code or module `rest_volts`. > Did you mean `rest_voltage`?
				                       ^^^^^^ error wrong-subject: A test disturbs what can be found, and `engine` is a trait. > Name a sign, a test, a code or a module.
				                               ^^^^^^^^^^^^^^^^^ error wrong-subject: A test disturbs what can be found, and `battery.open_cell` is a fault. > Name a sign, a test, a code or a module.
				}
				""");
	}

	@Test
	void durationsHaveAUnitOfTime() {
		MarkedText.check("""
				test t1 { results good, bad takes 8 }
				                                  ^ error unit-missing: 8 has no unit. > Write `8 min`.
				test t2 { results good, bad takes 8 V }
				                                  ^^^ error unit-mismatch: 8 V is no duration. > Write how many minutes the work takes.
				test t3 { results good, bad takes -8 min }
				                                  ^^^^^^ error negative-duration: A duration cannot be less than 0. > Write how many minutes the work takes.
				test t4 { results good, bad takes 0.5 h }
				""");
	}

	@Test
	void clausesAreGivenOnce() {
		MarkedText.check("""
				test t1 { results good, bad takes 8 min takes 9 min cost 1 cost 2 skill basic skill trained }
				                                        ^^^^^ error clause-twice: `takes` is given twice. > Keep one of the two.
				                                                           ^^^^ error clause-twice: `cost` is given twice. > Keep one of the two.
				                                                                              ^^^^^ error clause-twice: `skill` is given twice. > Keep one of the two.
				test t2 { measures V 0 .. 1 step 0.1 measures V 0 .. 2 step 0.1 }
				                                     ^^^^^^^^ error clause-twice: `measures` is given twice. > Keep one of the two.
				""");
	}

	@Test
	void whatIsSeenWithATestDoesNotSayHowItIsDone() {
		MarkedText.check("""
				test t1 {
				  takes 3 min cost 2
				  ^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done. > Take this out.
				              ^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  seen_with rest_voltage
				  results cost, drive, skill
				  needs multimeter, clamp
				  ^^^^^^^^^^^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  in ignition off
				  ^^^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  prepare "Wait."
				  ^^^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  wait 5 min
				  ^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  drive above 20 km/h for 1 min
				  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  do "Charge."
				  ^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  skill trained
				  ^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  fits "A lamp"
				  ^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				  disturbs charge_lamp
				  ^^^^^^^^^^^^^^^^^^^^ error seen-with-effort: `t1` is seen with `rest_voltage`, which says how it is done.
				}
				test t2 { seen_with rest_voltage results a, b for tarn at battery place "At the lamp" caution charging_gas }
				rule r1 { in ignition off run t2 on a : proves nothing }
				rule r2 { in ignition on run t2 on a : proves nothing }
				             ^^^^^^^^^^^ warning states-disagree: The rule is for `ignition on`, but its test `t2` is made in `ignition off`.
				""");
	}

	@Test
	void theOtherTestIsDoneByItself() {
		MarkedText.check("""
				test t1 { seen_with rest_voltage results a, b }
				test t2 { seen_with t1 results a, b }
				                    ^^ error seen-with-seen: `t2` is seen with `t1`, which is itself seen with `rest_voltage`. > Write `rest_voltage`.
				test t3 { seen_with t3 results a, b }
				                    ^^ error seen-with-seen: `t3` is seen with itself. > Name the test that is done; that one has no `seen_with`.
				test t4 { seen_with t5 results a, b }
				                    ^^ error seen-with-seen: `t4` is seen with `t5`, which is itself seen with `t4`. > Name the test that is done; that one has no `seen_with`.
				test t5 { seen_with t4 results a, b }
				                    ^^ error seen-with-seen: `t5` is seen with `t4`, which is itself seen with `t5`.
				test t6 { seen_with rest_volts results a, b }
				                    ^^^^^^^^^^ error unknown-name: There is no test `rest_volts`. > Did you mean `rest_voltage`?
				""");
	}
}
