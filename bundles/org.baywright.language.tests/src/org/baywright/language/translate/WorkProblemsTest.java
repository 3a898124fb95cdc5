package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.junit.jupiter.api.Test;

class WorkProblemsTest {

	@Test
	void aRepairFixesSomething() {
		MarkedText.check("""
				repair p1 { steps "Look." }
				       ^^ error repair-fixes-nothing: The repair `p1` does not say which fault it puts right. > Add `fixes` with a fault, such as `fixes battery.discharged`.
				""");
	}

	@Test
	void whatAPersonReadsSaysSomething() {
		MarkedText.check("""
				hazard gas "" { caution "" licensed " " reference "" }
				                        ^^ error empty-text: The text after `caution` says nothing. > Write what protects from the hazard.
				                                    ^^^ error empty-text: The text after `licensed` says nothing. > Write who may work on it, or take the line out.
				                                                  ^^ error empty-text: The text after `reference` says nothing. > Write where it is written, or take the line out.
				test t { results a, b prepare "" fits "" }
				                              ^^ error empty-text: The text after `prepare` or `do` says nothing. > Write what to do, or take the line out.
				                                      ^^ error empty-text: The text after `fits` says nothing. > Write what is fitted for the test, or take the line out.
				law "" : never charge_lamp is lit, charge_lamp is dark
				    ^^ error empty-text: The text after `law` says nothing. > Write the law in words.
				rule r { run charge_lamp on lit : refers " " on dark : refers "x" because "" source published "" by "" on 2026-03-02 }
				                                         ^^^ error empty-text: The text after `refers` says nothing. > Write to whom the customer is sent, and with what.
				                                                                          ^^ error empty-text: The text after `because` says nothing. > Write why the rule is right.
				                                                                                              ^^ error empty-text: The text after `published` says nothing. > Write where it can be read.
				                                                                                                    ^^ error empty-text: The text after `by` says nothing. > Write who says so.
				repair p1 { fixes battery.discharged steps "Charge it." " " tell_customer "" changes_for_good "" }
				                                                        ^^^ error empty-text: The text after `steps` says nothing. > Write what is to be done, in the order of the work.
				                                                                          ^^ error empty-text: The text after `tell_customer` says nothing. > Write what the customer must know, or take the line out.
				                                                                                              ^^ error empty-text: The text after `changes_for_good` says nothing. > Write what is not as before, or take the line out.
				review r by "" on 2026-03-02 objects "" meaning "x"
				            ^^ error empty-text: The text after `by` says nothing. > Write who looked at the rule.
				                                     ^^ error empty-text: The text after `agrees` or `objects` says nothing. > Write the remark, or take the quotes out.
				accept "gap:x@00000000" because "It is known." by "" on 2026-03-02
				                                                  ^^ error empty-text: The text after `by` says nothing. > Write who accepts it.
				""");
	}

	@Test
	void whatARepairNamesExists() {
		MarkedText.check("""
				repair p1 {
				  fixes battery.flat, battery
				        ^^^^^^^^^^^^ error unknown-name: There is no fault `battery.flat`. > Define the fault, or correct the name.
				                      ^^^^^^^ error unknown-name: `battery` is a part, and a fault of the part is needed here. > Write `battery.discharged` or `battery.open_cell`.
				  caution gas
				          ^^^ error unknown-name: There is no hazard `gas`. > Define the hazard, or correct the name.
				  needs hammer
				        ^^^^^^ error unknown-name: There is no tool `hammer`. > Define the tool, or correct the name.
				  takes 3
				        ^ error unit-missing: 3 has no unit. > Write `3 min`.
				  verify {
				    clear bmc
				          ^^^ error unknown-name: There is no module `bmc`. > Did you mean `bcm`?
				    cycle ignitoin
				          ^^^^^^^^ error unknown-name: There is no state `ignitoin`. > Did you mean `ignition`?
				    set ignition onn
				                 ^^^ error unknown-value: The state `ignition` has no value `onn`. > Did you mean `on`?
				    read lift
				         ^^^^ error unknown-name: `lift` is a state, and a module is needed here. > Name a module.
				    expect low_suply absent
				           ^^^^^^^^^ error unknown-name: There is no code `low_suply`. > Did you mean `low_supply`?
				    repeat rest expect 12 V
				           ^^^^ error unknown-name: There is no test `rest`. > Define the test, or correct the name.
				    repeat rest_voltage expect 12 Ohm
				                               ^^^^^^ error unit-mismatch: 12 Ohm cannot be compared with a value in V. > Write it in V, or in another unit of the same kind.
				    repeat charge_lamp expect lidd
				                              ^^^^ error unknown-value: `charge_lamp` has no value `lidd`. > Its values are `lit` or `dark`. Add it where `charge_lamp` is defined, or correct the name.
				  }
				}
				""");
	}

	@Test
	void clausesOfARepairAreGivenOnce() {
		MarkedText.check("""
				repair p1 { fixes battery.discharged takes 1 min takes 2 min cost 1 cost 2 skill basic skill trained }
				                                                 ^^^^^ error clause-twice: `takes` is given twice. > Keep one of the two.
				                                                                    ^^^^ error clause-twice: `cost` is given twice. > Keep one of the two.
				                                                                                       ^^^^^ error clause-twice: `skill` is given twice. > Keep one of the two.
				""");
	}

	@Test
	void aJobNamesItsFamily() {
		MarkedText.check("""
				job "J1" { found no_crank was battery.discharged }
				    ^^^^ error job-without-family: The job does not say what vehicle it was done on. > Add `on` with the family.
				job "J2" { on shared_platform found no_crank was battery.discharged }
				              ^^^^^^^^^^^^^^^ error job-on-base: `shared_platform` is a base for other families; no vehicle belongs to it. > Name the family of the vehicle.
				job "J3" { on tarnn found no_crank was battery.discharged }
				              ^^^^^ error unknown-name: There is no family `tarnn`. > Did you mean `tarn`?
				""");
	}

	@Test
	void aJobHasAnEnd() {
		MarkedText.check("""
				job "J1" { on tarn found no_crank }
				    ^^^^ error job-without-end: The job does not say what the cause was. > Add `was` with the fault, or `was referred`.
				""");
	}

	@Test
	void aJobIsToldOnce() {
		MarkedText.check("""
				job "J1" { on tarn found no_crank was referred }
				job "J1" { on heron found no_crank was referred }
				    ^^^^ error duplicate-name: There is already a job "J1" in this file. > Choose another name.
				""");
	}

	@Test
	void readingsFit() {
		MarkedText.check("""
				job "J1" {
				  on tarn with engine diesel_3_0, built 2030, tail_lift fitted, no_crank
				                      ^^^^^^^^^^ error unknown-value: `engine` has no value `diesel_3_0`. > Did you mean `diesel_2_0`?
				                                        ^^^^ error reading-out-of-range: 2030 lies outside of what `built` can give, 2015 .. 2021. > Correct the value, or widen the range of `built`.
				                                              ^^^^^^^^^ error trait-not-in-family: The family `tarn` has no trait `tail_lift`. > Take it out, or define it in the family.
				                                                                ^^^^^^^^ error unknown-name: `no_crank` is a sign, and a trait is needed here. > Correct the name.
				  found rest_voltage 40 V, charge_lamp lidd, no_cranc, bcm, bcm present, engine
				                     ^^^^ error reading-out-of-range: 40 V lies outside of what `rest_voltage` can give, 0.0 V .. 18.0 V. > Correct the value, or widen the range of `rest_voltage`.
				                                       ^^^^ error unknown-value: `charge_lamp` has no value `lidd`. > Its values are `lit` or `dark`. Add it where `charge_lamp` is defined, or correct the name.
				                                             ^^^^^^^^ error unknown-name: There is no sign, test, code or module `no_cranc`. > Did you mean `no_crank`?
				                                                       ^^^ error wrong-predicate: `bcm` is a module, and the job does not say what of it. > Write `answers` or `silent` after it.
				                                                            ^^^ error reading-twice: `bcm` is given twice. > Keep one of the two.
				                                                                         ^^^^^^ error reading-twice: `engine` is given twice. > Keep one of the two.
				  was battery.discharged
				}
				job "J2" {
				  on tarn
				  found rest_voltage 11.63 V, rest_voltage 12 V, cranking_voltage, charge_lamp 3 V, starter_drop 3 Ohm, low_supply silent, no_crank lit
				                     ^^^^^^^ warning reading-off-step: 11.63 V lies between two steps of `rest_voltage`, which is read to 0.1 V. > Write `11.6 V`, or make the step finer.
				                              ^^^^^^^^^^^^ error reading-twice: `rest_voltage` is given twice. > Keep one of the two.
				                                                 ^^^^^^^^^^^^^^^^ error number-needed: The job does not say which value `cranking_voltage` had. > Write a value, such as `cranking_voltage 0.0 V`.
				                                                                   ^^^^^^^^^^^^^^^ error name-needed: The job does not say which value `charge_lamp` had. > Write a value, such as `charge_lamp lit`.
				                                                                                                 ^^^^^ error unit-mismatch: 3 Ohm cannot be compared with a value in V. > Write it in V, or in another unit of the same kind.
				                                                                                                        ^^^^^^^^^^^^^^^^^ error wrong-predicate: `low_supply` is a code, of which one cannot say `silent`. > Write `present`, `absent`, `unread`, `active`, `stored`, `pending` or `untested` after it.
				                                                                                                                           ^^^^^^^^^^^^ error wrong-predicate: `no_crank` is a sign, of which one cannot say `lit`. > Write `present` or `absent` after it.
				  was battery.discharged
				}
				job "J3" {
				  on tarn
				  found charge_lamp, battery.discharged, charging_voltage 13
				                     ^^^^^^^ error unknown-name: There is no sign, test, code or module `battery`. > Correct the name.
				                            ^ error syntax: `.` does not fit here. > After `battery` comes the name of a value, a value with its unit, such as 12.4 V, `present`, `absent`, `unread`, `active`, `stored`, `pending` and so on.
				  was battery.flat
				      ^^^^^^^^^^^^ error unknown-name: There is no fault `battery.flat`.
				}
				""");
	}

	@Test
	void aStatusIsOneByte() {
		MarkedText.check("""
				job "J1" { on tarn found no_crank, low_supply status 2F was referred }
				job "J2" { on tarn found no_crank, low_supply status 0x08 was referred }
				job "J3" { on tarn found no_crank, low_supply status 2G was referred }
				                                                     ^^ error status-byte: `2G` is no status byte: that is two digits from 0 to 9 and A to F (ISO 14229-1). > Copy the two digits from the tool, such as `low_supply status 2F`, or write the state in words: `present`, `absent`, `unread`, `active`, `stored`, `pending` or `untested`.
				job "J5" { on tarn found no_crank, low_supply status 2 was referred }
				                                                     ^ error status-byte: `2` is no status byte: that is two digits from 0 to 9 and A to F (ISO 14229-1). > Copy the two digits from the tool, such as `low_supply status 2F`, or write the state in words: `present`, `absent`, `unread`, `active`, `stored`, `pending` or `untested`.
				job "J4" { on tarn found no_crank status 08 was referred }
				                         ^^^^^^^^^^^^^^^^^^ error wrong-predicate: `no_crank` is a sign, of which one cannot say `status 08`. > Write `present` or `absent` after it.
				""");
	}

	@Test
	void aStateOfCodesMayBeTheNameOfAResult() {
		MarkedText.check("""
				test pump { results active, stored, pending, untested, status }
				job "J1" { on tarn found pump active was referred }
				job "J2" { on tarn found pump is stored was referred }
				job "J3" { on tarn found pump status was referred }
				rule r1 { given pump is active run pump on stored : suspects battery.discharged on pending, untested, status, active : proves nothing }
				""");
	}

	@Test
	void aModuleAnswersInAnyOfItsStates() {
		MarkedText.check("""
				module horn answers in ignition on or ignition off
				module bell answers in ignition on, ignition off
				                                  ^ warning comma-for-or: The module answers in any of these states, and a comma means all of them. > Write `or` between them.
				""");
	}

	@Test
	void modulesAreFittedInTheFamily() {
		MarkedText.check("""
				job "J1" { on tarn found lift_control silent, tilt_range unread was referred }
				                         ^^^^^^^^^^^^ error module-not-on-vehicle: A vehicle of the family `tarn` has no module `lift_control`. > Correct the family or the module, or name the family under `on` at the module.
				                                              ^^^^^^^^^^ error module-not-on-vehicle: A vehicle of the family `tarn` has no module `lift_control`. > Correct the family or the code, or name the family under `on` at the module.
				""");
	}

	@Test
	void vehicleNumbersHaveTheFormOfTheStandard() {
		MarkedText.check("""
				job "J1" { on tarn vin "WZZT3AAAAJ000001" found no_crank was referred }
				                       ^^^^^^^^^^^^^^^^^^ error vin-form: A vehicle identification number has 17 characters; this one has 16. > Copy the number from the vehicle again.
				job "J2" { on tarn vin "WZZT3AAAAJO000001" found no_crank was referred }
				                       ^^^^^^^^^^^^^^^^^^^ error vin-form: A vehicle identification number never has the letter O, which would be taken for a digit. > Copy the number from the vehicle again.
				job "J3" { on tarn vin "WZZX3AAAAJ0000001" found no_crank was referred }
				                       ^^^^^^^^^^^^^^^^^^^ warning vin-not-of-family: The number does not begin like those of the family `tarn`. > Correct the family or the number, or add its beginning to the family with `vin`.
				job "J4" { on heron vin "WZZHA2AA5J0000001" found no_crank was referred }
				                        ^^^^^^^^^^^^^^^^^^^ error vin-check-digit: The check digit in position 9 is 5; the other characters ask for 7. > Copy the number from the vehicle again.
				job "J5" { on heron vin "WZZHA2AA7J0000001" found no_crank was referred }
				""");
	}

	@Test
	void aJobSaysEachThingOnce() {
		MarkedText.check("""
				job "J1" { on tarn on heron vin "WZZT3AAAAJ0000001" vin "WZZT3AAAAJ0000001" found no_crank was referred }
				                   ^^ error clause-twice: `on` is given twice. > Keep one of the two.
				                                                    ^^^ error clause-twice: `vin` is given twice. > Keep one of the two.
				""");
	}

	@Test
	void reviewsNameARule() {
		MarkedText.check("""
				review flat_batery by "A" on 2026-01-01 agrees meaning "x"
				       ^^^^^^^^^^^ error unknown-name: There is no rule `flat_batery`. > Did you mean `flat_battery`?
				review flat_battery by "A" on 2026-02-31 objects "No." meaning "x"
				                              ^^^^^^^^^^ error wrong-date: There is no date 2026-02-31. > Write year, month and day as numbers, such as 2026-03-02.
				accept "gap@1" because "Rare." by "A" on 2026-06-31
				                                         ^^^^^^^^^^ error wrong-date: There is no date 2026-06-31. > Write year, month and day as numbers, such as 2026-03-02.
				""");
	}

	@Test
	void aSignOffIsMetByPeople() {
		MarkedText.check("""
				hazard gas { caution "No flame." }
				sign_off { agree 0 agree 2 not_by author hazard gass by "gas"
				                 ^ error agree-number: 0 is no number of people who can agree. > Write how many must agree, such as `agree 2`.
				                   ^^^^^ error clause-twice: `agree` is given twice. > Keep one of the two.
				                                                ^^^^ error unknown-name: There is no hazard `gass`. > Did you mean `gas`?
				  hazard gas by "" }
				                ^^ error empty-text: The text after `by` says nothing. > Write what the reviewer must be qualified for.
				sign_off { agree 1.5 }
				                 ^^^ error agree-number: 1.5 is no number of people who can agree. > Write how many must agree, such as `agree 2`.
				sign_off { agree 1000 }
				                 ^^^^ error agree-number: 1000 is no number of people who can agree. > Write how many must agree, such as `agree 2`.
				reviewer "" qualified "gas", ""
				         ^^ error empty-text: The text after `reviewer` says nothing. > Write who it is.
				                             ^^ error empty-text: The text after `qualified` says nothing. > Write what the reviewer is qualified for.
				""");
		MarkedText.check("""
				sign_off { agree 2 }
				sign_off { not_by author }
				^^^^^^^^ error sign-off-twice: There is already a sign-off. > Keep one of the two.
				""");
	}

	@Test
	void remarksAndAnswersSayWhoAndWhat() {
		MarkedText.check("""
				remark on flat_batery by "A" on 2026-01-01 "x"
				          ^^^^^^^^^^^ error unknown-name: There is no rule `flat_batery`. > Did you mean `flat_battery`?
				remark on change "" by "" on 2026-02-31 "" { at "" at "x" }
				                 ^^ error empty-text: The text after `change` says nothing. > Write which change is meant.
				                       ^^ error empty-text: The text after `by` says nothing. > Write who remarks it.
				                             ^^^^^^^^^^ error wrong-date: There is no date 2026-02-31. > Write year, month and day as numbers, such as 2026-03-02.
				                                        ^^ error empty-text: The text after `remark` says nothing. > Write the remark.
				                                                ^^ error empty-text: The text after `at` says nothing. > Copy the line of the rule that is meant, or take it out.
				                                                   ^^ error clause-twice: `at` is given twice. > Keep one of the two.
				review flat_battery by "A" on 2026-01-01 agrees meaning "x" { reply by "" on 2026-01-32 "" }
				                                                                       ^^ error empty-text: The text after `by` says nothing. > Write who answers.
				                                                                             ^^^^^^^^^^ error wrong-date: There is no date 2026-01-32. > Write year, month and day as numbers, such as 2026-03-02.
				                                                                                        ^^ error empty-text: The text after `reply` or `settled` says nothing. > Write the answer, or take the quotes out.
				""");
	}

	@Test
	void theWordsOfPeerReviewMayBeNames() {
		MarkedText.check("""
				sign agree sign author sign reviewer sign qualified sign reply sign settled sign remark sign change_of_oil
				rule change { given agree, author, reviewer, qualified, reply, settled, remark then proves nothing because "x" source practice by "A" on 2026-01-01 }
				remark on change by "A" on 2026-01-01 "On the rule of that name."
				remark on change "A change" by "A" on 2026-01-01 "On a change."
				exclusive battery.discharged, battery.open_cell
				remark on change by "A" on 2026-01-01 "Behind a list of names."
				""");
	}

	@Test
	void nothingIsAcceptedWithoutAReason() {
		MarkedText.check("""
				accept "gap:no_crank@00000001" because " "
				^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error accepted-without-reason: Nothing is accepted without a reason. > Write between the quotes why it may stand, for those who read the rules after you.
				""");
	}

	@Test
	void onlySignsAreTriedAndThoseThatComeAndGoMoreThanOnce() {
		MarkedText.check("""
				module unit
				code low on unit = raw "1"
				sign stalls intermittent
				sign mute
				part cell { fault flat }
				repair one { fixes cell.flat verify {
				  expect low absent tried 3 times
				                          ^ error tried-code: A sign is tried; a code is read. > Take `tried` out.
				  expect mute absent
				  expect mute absent tried 0 times
				                           ^ error whole-number-needed: What is tried is counted in whole numbers, and at least once; 0 is none. > Write a whole number.
				  expect stalls absent
				  ^^^^^^^^^^^^^^^^^^^^ warning tried-missing: `stalls` comes and goes: that it is absent once proves nothing. > Say how often it was tried, such as `tried 10 times`.
				  expect stalls absent tried 10 times
				  expect stals absent
				         ^^^^^ error unknown-name: There is no code `stals`.
				  drive above 20 V for 1 min
				              ^^^^ error unit-mismatch: 20 V cannot be compared with a value in km/h.
				  drive 30 mph .. 40 mph for 90 s
				  wait 1 h do "Press the pedal."
				} }
				""");
	}
}
