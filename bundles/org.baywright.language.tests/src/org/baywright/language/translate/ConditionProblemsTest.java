package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.junit.jupiter.api.Test;

class ConditionProblemsTest {

	@Test
	void whereSpeaksOfTraits() {
		MarkedText.check("""
				rule r1 {
				  for tarn where no_crank
				                 ^^^^^^^^ error where-not-trait: `where` tells vehicles apart by their traits, and `no_crank` is a sign. > Put what is found on the vehicle under `given`.
				  given no_crank
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void andBesideOrNeedsBrackets() {
		MarkedText.check("""
				rule r1 {
				  given no_crank or charge_lamp is dark, rest_voltage below 9 V
				                    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error and-in-or: `or` stands beside `and` or a comma, and it can be read in two ways. > Put brackets around what belongs together, such as `(charge_lamp is dark, rest_voltage below 9 V)`, or give the rest a `given` of its own.
				  then suspects battery.discharged
				}
				rule r2 {
				  given (no_crank or charge_lamp is dark), rest_voltage below 9 V
				  then suspects battery.discharged
				}
				rule r3 {
				  given no_crank or (charge_lamp is dark, rest_voltage below 9 V)
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void namesInConditionsExist() {
		MarkedText.check("""
				rule r1 {
				  for tarn, herron except tarnn where enginne is electric
				            ^^^^^^ error unknown-name: There is no family `herron`. > Did you mean `heron`?
				                          ^^^^^ error unknown-name: There is no family `tarnn`. > Did you mean `tarn`?
				                                      ^^^^^^^ error unknown-name: There is no trait `enginne`. > Did you mean `engine`?
				  given no_cranc, rest_votlage < 9 V, battery.dischraged confirmed, battery suspected, ignition
				        ^^^^^^^^ error unknown-name: There is no sign, test, code, module or trait `no_cranc`. > Did you mean `no_crank`?
				                  ^^^^^^^^^^^^ error unknown-name: There is no sign, test, code, module or trait `rest_votlage`. > Did you mean `rest_voltage`?
				                                      ^^^^^^^^^^^^^^^^^^ error unknown-name: There is no fault `battery.dischraged`. > Did you mean `battery.discharged`?
				                                                                    ^^^^^^^ error unknown-name: `battery` is a part, and a condition needs a fault of it. > Write `battery.discharged` or `battery.open_cell`.
				                                                                                       ^^^^^^^^ error unknown-name: `ignition` is a state, of which a condition cannot speak. > Put the vehicle into a state with `in`.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void aTraitMustBelongToTheFamilies() {
		MarkedText.check("""
				rule r1 {
				  for tarn where tail_lift is fitted
				                 ^^^^^^^^^ error trait-not-in-family: No vehicle meant here has the trait `tail_lift`. > Define the trait in the family, or name a family that has it under `for`.
				  then suspects battery.discharged
				}
				rule r2 {
				  for tarn, heron where tail_lift is fitted
				                        ^^^^^^^^^ warning trait-missing: The family `tarn` has no trait `tail_lift`, so this never holds there. > Take the family out, or define the trait in it.
				  then suspects battery.discharged
				}
				rule r3 {
				  for every family where tail_lift is fitted
				  then suspects battery.discharged
				}
				rule r4 {
				  for shared_platform where engine is electric
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void traitValuesExist() {
		MarkedText.check("""
				rule r1 {
				  for tarn where engine is diesel_3_0 or engine is any of (electric, petrol)
				                           ^^^^^^^^^^ error unknown-value: `engine` has no value `diesel_3_0`. > Did you mean `diesel_2_0`?
				                                                                     ^^^^^^ error unknown-value: `engine` has no value `petrol`. > Its values are `diesel_2_0`, `petrol_1_6` or `electric`. Add it where `engine` is defined, or correct the name.
				  then suspects battery.discharged
				}
				rule r2 {
				  for tarn where built is new or built 2018 or engine above 3
				                                       ^^^^ error syntax: `2018` does not fit here. > After `built` comes `.`, `not`, `present`, `absent`, `unread`, `active`, `stored`, `pending` and so on.
				  then suspects battery.discharged
				}
				rule r3 {
				  for tarn where built is 2018 year .. 2019 and built below 2010 and built at_least 2018 V
				                                                            ^^^^ warning limit-out-of-range: 2010 lies outside of what `built` can give, 2015 .. 2021. > Correct the limit, or widen the range of `built`.
				                                                                                    ^^^^^^ error unit-mismatch: A plain number is needed here, and 2018 V has a unit. > Write `2018`.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void predicatesFitTheirSubject() {
		MarkedText.check("""
				rule r1 {
				  given battery.discharged answers
				        ^^^^^^^^^^^^^^^^^^^^^^^^^^ error wrong-predicate: `battery.discharged` is a fault, of which one cannot say `answers`. > Write `confirmed`, `suspected` or `cleared` after it.
				  then suspects battery.discharged
				}
				rule r2 {
				  given battery.discharged, no_crank unread, bcm present, bcm, low_supply silent
				        ^^^^^^^^^^^^^^^^^^ error wrong-predicate: `battery.discharged` is a fault, and the condition does not say what of it. > Write `confirmed`, `suspected` or `cleared` after it.
				                            ^^^^^^^^^^^^^^^ error wrong-predicate: `no_crank` is a sign, of which one cannot say `unread`. > Write `present`, `absent` or `unexplained` after it.
				                                             ^^^^^^^^^^^ error wrong-predicate: `bcm` is a module, of which one cannot say `present`. > Write `answers` or `silent` after it.
				                                                          ^^^ error wrong-predicate: `bcm` is a module, and the condition does not say what of it. > Write `answers` or `silent` after it.
				                                                               ^^^^^^^^^^^^^^^^^ error wrong-predicate: `low_supply` is a code, of which one cannot say `silent`. > Write `present`, `absent`, `active`, `stored`, `pending`, `untested`, `missing` or `unread` after it.
				  then suspects battery.discharged
				}
				rule r3 {
				  given rest_voltage, charge_lamp present, rest_voltage confirmed, no_crank below 3
				        ^^^^^^^^^^^^ error wrong-predicate: `rest_voltage` has values, and the condition names none. > Write a value, such as `rest_voltage below 18.0 V`.
				                      ^^^^^^^^^^^^^^^^^^^ error wrong-predicate: `charge_lamp` has values, and the condition names none. > Write a value, such as `charge_lamp is lit`.
				                                           ^^^^^^^^^^^^^^^^^^^^^^ error wrong-predicate: `rest_voltage` has values, and the condition names none. > Write a value, such as `rest_voltage below 18.0 V`.
				                                                                   ^^^^^^^^^^^^^^^^ error wrong-predicate: `no_crank` is a sign, of which one cannot say `below 3`. > Write `present`, `absent` or `unexplained` after it.
				  then suspects battery.discharged
				}
				rule r4 {
				  given bcm unexplained, low_supply unexplained, no_crank unexplained, no_crank not unexplained
				        ^^^^^^^^^^^^^^^ error wrong-predicate: `bcm` is a module, of which one cannot say `unexplained`. > Write `answers` or `silent` after it.
				                         ^^^^^^^^^^^^^^^^^^^^^^ error wrong-predicate: `low_supply` is a code, of which one cannot say `unexplained`. > Write `present`, `absent`, `active`, `stored`, `pending`, `untested`, `missing` or `unread` after it.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void unreadIsSilence() {
		MarkedText.check("""
				rule r1 {
				  given low_supply unread
				        ^^^^^^^^^^^^^^^^^ note code-unread: A code is unread exactly when its module does not answer. > Write `bcm silent`, which says it plainly.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void limitsHaveTheRightUnit() {
		MarkedText.check("""
				rule r1 {
				  given rest_voltage < 9 Ohm, rest_voltage > 9, rest_voltage is 12000 mV .. 13 V, rest_voltage < 9 VV
				                       ^^^^^ error unit-mismatch: 9 Ohm cannot be compared with a value in V. > Write it in V, or in another unit of the same kind.
				                                             ^ error unit-missing: 9 has no unit. > Write `9 V`, or the unit you measured in.
				                                                                                                   ^^ error unknown-unit: There is no unit `VV`. > Use a unit such as V, mA, Ohm, bar, degC, min or %.
				  then suspects battery.discharged
				}
				rule r2 {
				  given charge_lamp < 9 V, rest_voltage is lit, charge_lamp is lid, charge_lamp is 3 V
				                    ^^^^^ error name-needed: `charge_lamp` gives no number. > Write one of its values: `lit` or `dark`.
				                                           ^^^ error number-needed: `rest_voltage` gives a number, not `lit`. > Write a value such as 0.0 V.
				                                                               ^^^ error unknown-value: `charge_lamp` has no value `lid`. > Did you mean `lit`?
				                                                                                   ^^^ error name-needed: `charge_lamp` gives no number. > Write one of its values: `lit` or `dark`.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void limitsLieOnAStepWithinTheRange() {
		MarkedText.check("""
				rule r1 {
				  given rest_voltage < 12.45 V, rest_voltage above 19 V, rest_voltage is 12.4 .. 13 V
				                       ^^^^^^^ warning limit-off-step: 12.45 V lies between two steps of `rest_voltage`, which is read to 0.1 V. > Write `12.4 V` or `12.5 V`, or make the step finer.
				                                                   ^^^^ warning limit-out-of-range: 19 V lies outside of what `rest_voltage` can give, 0.0 V .. 18.0 V. > Correct the limit, or widen the range of `rest_voltage`.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void rangesAreNotReversed() {
		MarkedText.check("""
				rule r1 {
				  given rest_voltage is 13 V .. 12400 mV
				                        ^^^^^^^^^^^^^^^^ error range-reversed: The range 13 V .. 12400 mV ends before it begins. > Write the smaller value first.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void lawsSpeakOfTheVehicle() {
		MarkedText.check("""
				law "x" : when battery.discharged confirmed then no_crank
				               ^^^^^^^^^^^^^^^^^^ error law-verdict: A law speaks of the vehicle and of what can be found on it, not of verdicts such as that on `battery.discharged`. > Write a rule with `given`, or `exclusive` for faults that exclude each other.
				law "y" for tarn : never tail_lift is fitted
				                         ^^^^^^^^^ error trait-not-in-family: No vehicle meant here has the trait `tail_lift`. > Define the trait in the family, or name a family that has it under `for`.
				law "z" : when no_crank unexplained then lift_dead
				               ^^^^^^^^^^^^^^^^^^^^ error law-verdict: Whether a sign is explained depends on verdicts, of which a law does not speak. > Write `present` or `absent`.
				""");
	}

	@Test
	void aModuleMustBeFitted() {
		MarkedText.check("""
				rule r1 {
				  for tarn
				  given lift_control silent, tilt_range present
				        ^^^^^^^^^^^^^^^^^^^ warning not-fitted: No vehicle meant here has the module of `lift_control`. > Name the family under `on` at the module `lift_control`, or take the condition out.
				                             ^^^^^^^^^^^^^^^^^^ warning not-fitted: No vehicle meant here has the module of `tilt_range`. > Name the family under `on` at the module `lift_control`, or take the condition out.
				  then suspects battery.discharged
				}
				""");
	}

	@Test
	void degreesAreNotCoulombs() {
		MarkedText.check("""
				test oil { measures degC -40 .. 150 step 1 }
				rule r1 {
				  given oil above 80 C, oil above 176 degF
				                  ^^^^ error unit-mismatch: 80 C cannot be compared with a value in degC. > Did you mean `80 degC`?
				  then suspects battery.discharged
				}
				""");
	}
}
