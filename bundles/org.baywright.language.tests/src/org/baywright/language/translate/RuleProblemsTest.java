package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.junit.jupiter.api.Test;

class RuleProblemsTest {

	@Test
	void anEmptyRuleIsReported() {
		MarkedText.check("""
				rule r1 { }
				     ^^ error empty-rule: The rule `r1` comes to no conclusion. > Add what it proves, such as `then suspects battery.discharged`.
				rule r2 { given no_crank run rest_voltage }
				     ^^ error empty-rule: The rule `r2` comes to no conclusion. > Add what it proves, such as `met : suspects battery.discharged`.
				""");
	}

	@Test
	void aRuleSaysWhereItComesFrom() {
		MarkedText.check("""
				rule r1 { given no_crank then suspects battery.discharged }
				     ^^ warning no-provenance: The rule `r1` does not say where its knowledge comes from. > Add `source` and `by` and `because`.
				rule r2 { given no_crank then suspects battery.discharged source memory by "A" on 2026-01-01 }
				     ^^ warning no-provenance: The rule `r2` does not say where its knowledge comes from. > Add `because`.
				""");
	}

	@Test
	void datesExist() {
		MarkedText.check("""
				rule r1 { given no_crank then suspects battery.discharged by "A" on 2026-02-30 }
				                                                                    ^^^^^^^^^^ error wrong-date: There is no date 2026-02-30. > Write year, month and day as numbers, such as 2026-03-02.
				rule r2 { given no_crank then suspects battery.discharged by "A" on 2026-13-01 }
				                                                                    ^^^^^^^^^^ error wrong-date: There is no date 2026-13-01. > Write year, month and day as numbers, such as 2026-03-02.
				""");
	}

	@Test
	void outcomesWithATestNeedTheTest() {
		MarkedText.check("""
				rule r1 { expect 12 V met : clears battery.discharged }
				                 ^^^^ error expect-without-test: The rule expects a result but runs no test. > Name the test with `run`.
				                      ^^^ error outcome-without-test: The rule runs no test, so nothing can be `met`. > Name the test with `run`, or write `then`.
				rule r2 { on lit : clears battery.discharged }
				          ^^^^^^ error outcome-without-test: The rule runs no test, so nothing can be `on lit`. > Name the test with `run`, or write `then`.
				""");
	}

	@Test
	void thenIsForRulesWithoutATest() {
		MarkedText.check("""
				rule r1 { run charge_lamp then clears battery.discharged }
				                          ^^^^ error then-with-test: The rule runs a test, so it must say which result leads here. > Write `met`, `below`, `above`, `otherwise` or `on` with a result in place of `then`.
				rule r2 { run charge_lamp on lit : clears battery.discharged then suspects battery.open_cell }
				                                                             ^^^^ error then-with-test: The rule runs a test, so it must say which result leads here. > Write `met`, `below`, `above`, `otherwise` or `on` with a result in place of `then`.
				""");
	}

	@Test
	void metNeedsAnExpectedResult() {
		MarkedText.check("""
				rule r1 { run rest_voltage met : clears battery.discharged below : suspects battery.discharged }
				                           ^^^ error met-without-expect: `met` compares with the expected result, and the rule names none. > Add `expect` with the right result, or write `on` with the results meant.
				                                                           ^^^^^ error met-without-expect: `below` compares with the expected result, and the rule names none. > Add `expect` with the right result, or write `on` with the results meant.
				""");
	}

	@Test
	void belowAndAboveNeedNumbers() {
		MarkedText.check("""
				rule r1 { run charge_lamp expect lit met : clears battery.discharged below : suspects battery.discharged }
				                                                                     ^^^^^ error below-needs-number: `charge_lamp` gives no number, so nothing is `below` the expected result. > Write `otherwise`, or `on` with one of `lit` or `dark`.
				""");
	}

	@Test
	void belowNeedsALimitBelow() {
		MarkedText.check("""
				rule r1 { run rest_voltage expect at_most 13 V met : clears battery.discharged below : suspects battery.discharged }
				                                                                               ^^^^^ error nothing-beyond: No result lies below the expected one, which has no limit on that side. > Take the outcome out, or give the expected result the limit.
				rule r2 { run rest_voltage expect above 12 V met : clears battery.discharged above : suspects battery.discharged }
				                                                                             ^^^^^ error nothing-beyond: No result lies above the expected one, which has no limit on that side. > Take the outcome out, or give the expected result the limit.
				""");
	}

	@Test
	void eachOutcomeIsGivenOnce() {
		MarkedText.check("""
				rule r1 {
				  run charge_lamp
				  on lit : clears battery.discharged
				  on lit : suspects battery.open_cell
				  ^^^^^^ error outcome-twice: `on lit` is given twice. > Put all conclusions after one of them.
				  otherwise : proves nothing
				  otherwise : proves nothing
				  ^^^^^^^^^ error outcome-twice: `otherwise` is given twice. > Put all conclusions after one of them.
				}
				rule r2 { then clears battery.discharged then suspects battery.open_cell }
				                                         ^^^^ error outcome-twice: `then` is given twice. > Put all conclusions after one `then`.
				""");
	}

	@Test
	void expectedResultsFitTheTest() {
		MarkedText.check("""
				rule r1 { run rest_voltage expect lit met : clears battery.discharged }
				                                  ^^^ error number-needed: `rest_voltage` gives a number, not `lit`. > Write a value such as 0.0 V.
				rule r2 { run charge_lamp expect 12.4 V .. 13 V met : clears battery.discharged }
				                                 ^^^^^^^^^^^^^^ error name-needed: `charge_lamp` gives no number. > Write one of its values: `lit` or `dark`.
				rule r3 { run rest_voltage expect 12.4 Ohm .. 13 Ohm met : clears battery.discharged }
				                                  ^^^^^^^^ error unit-mismatch: 12.4 Ohm cannot be compared with a value in V. > Write it in V, or in another unit of the same kind.
				                                              ^^^^^^ error unit-mismatch: 13 Ohm cannot be compared with a value in V. > Write it in V, or in another unit of the same kind.
				rule r4 { run rest_voltage expect 12.4 .. 13 met : clears battery.discharged }
				                                  ^^^^ error unit-missing: 12.4 has no unit. > Write `12.4 V`, or the unit you measured in.
				                                          ^^ error unit-missing: 13 has no unit. > Write `13 V`, or the unit you measured in.
				""");
	}

	@Test
	void faultsOfConclusionsExist() {
		MarkedText.check("""
				rule r1 { given no_crank then confirms battery.flat, batery.discharged, battery, no_crank }
				                                       ^^^^^^^^^^^^ error unknown-name: There is no fault `battery.flat`. > Define the fault, or correct the name.
				                                                     ^^^^^^^^^^^^^^^^^ error unknown-name: There is no fault `batery.discharged`. > Did you mean `battery.discharged`?
				                                                                        ^^^^^^^ error unknown-name: `battery` is a part, and a fault of the part is needed here. > Write `battery.discharged` or `battery.open_cell`.
				                                                                                 ^^^^^^^^ error unknown-name: `no_crank` is a sign, and a fault is needed here. > Name a fault.
				""");
	}

	@Test
	void clausesAreGivenOnce() {
		MarkedText.check("""
				rule r1 { run rest_voltage run charge_lamp on lit : proves nothing }
				                           ^^^ error clause-twice: `run` is given twice. > Keep one of the two.
				                                              ^^^ error number-needed: `rest_voltage` gives a number, not `lit`. > Write a value such as 0.0 V.
				rule r2 { run rest_voltage expect 12 V expect 13 V met : proves nothing }
				                                       ^^^^^^ error clause-twice: `expect` is given twice. > Put all of it after one `expect`, with commas between.
				rule r3 { given no_crank then proves nothing source memory source practice by "A" on 2026-01-01 by "B" on 2026-01-02 }
				                                                           ^^^^^^ error clause-twice: `source` is given twice. > Keep one of the two.
				                                                                                                ^^ error clause-twice: `by` is given twice. > Keep one of the two.
				""");
	}

	@Test
	void theTestMustExist() {
		MarkedText.check("""
				rule r1 { run rest_votlage expect 12 V met : proves nothing }
				              ^^^^^^^^^^^^ error unknown-name: There is no test `rest_votlage`. > Did you mean `rest_voltage`?
				rule r2 { run no_crank met : proves nothing }
				              ^^^^^^^^ error unknown-name: `no_crank` is a sign, and a test is needed here. > Name a test.
				rule r3 { in ignition on, lift sideways then proves nothing }
				                               ^^^^^^^^ error unknown-value: The state `lift` has no value `sideways`. > Its values are `down` or `up`. Add it where `lift` is defined, or correct the name.
				""");
	}

	@Test
	void theStatesOfARuleAndItsTestAgree() {
		MarkedText.check("""
				test by_either { results a, b in ignition on, ignition cranking }
				rule r1 { in ignition off run charge_lamp on lit : proves nothing }
				             ^^^^^^^^^^^^ warning states-disagree: The rule is for `ignition off`, but its test `charge_lamp` is made in `ignition on`. > Correct the one that is wrong, or take it out of the rule: the test says it already.
				rule r2 { in ignition on, lift down run charge_lamp on lit : proves nothing }
				rule r3 { in lift up, ignition cranking run lift_supply met : proves nothing expect 12 V }
				             ^^^^^^^ warning states-disagree: The rule is for `lift up`, but its test `lift_supply` is made in `lift down`.
				                      ^^^^^^^^^^^^^^^^^ warning states-disagree: The rule is for `ignition cranking`, but its test `lift_supply` is made in `ignition on`.
				rule r4 { in ignition cranking, ignition off run by_either on a : proves nothing }
				rule r5 { in ignition off run by_either on a : proves nothing }
				             ^^^^^^^^^^^^ warning states-disagree: The rule is for `ignition off`, but its test `by_either` is made in `ignition on`.
				rule r6 { in lift up run by_either on a : proves nothing }
				rule r7 { in ignition sideways run charge_lamp on lit : proves nothing }
				                      ^^^^^^^^ error unknown-value: The state `ignition` has no value `sideways`.
				rule r8 { in ignition sideways, ignition off run charge_lamp on lit : proves nothing }
				                      ^^^^^^^^ error unknown-value: The state `ignition` has no value `sideways`.
				                                ^^^^^^^^^^^^ warning states-disagree: The rule is for `ignition off`, but its test `charge_lamp` is made in `ignition on`.
				""");
	}

	@Test
	void otherwiseDoesNotTakeTheExpectedResultInSilence() {
		MarkedText.check("""
				rule r1 { run charge_lamp expect lit otherwise : confirms battery.discharged }
				                                     ^^^^^^^^^ error otherwise-takes-expected: `otherwise` also takes the expected result, since no `met` says what that proves. > Write `met : ` with what the expected result proves, such as `met : proves nothing`, before `otherwise`.
				rule r2 { run charge_lamp expect lit met : proves nothing otherwise : confirms battery.discharged }
				""");
	}

	@Test
	void aChainHasPointsEachWithItsTest() {
		MarkedText.check("""
				family van
				sign dead
				part loom { fault front fault rear }
				test plug { measures V 0 .. 18 step 0.1 }
				test fuse { results whole, blown }
				rule feed_first_plug { given dead run plug expect at_least 12 V met : proves nothing otherwise : suspects loom.rear because "x" source practice by "A" on 2026-03-02 }
				chain feed {
				  given dead
				  point fuse expect whole : loom.front
				  point plug expect at_least 12 V : loom.rear
				  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error chain-rule-taken: The chain makes a rule `feed_first_plug` here, and there is one already. > Give the other rule another name.
				  because "x" source practice by "A" on 2026-03-02
				}
				chain short {
				      ^^^^^ error chain-short: The chain `short` has fewer than two points. > Add a `point` with its test and what the test must give, or write a rule.
				  point fuse expect whole : loom.front
				  because "x" source practice by "A" on 2026-03-02
				}
				chain knot {
				  point fuse expect whole : loom.front
				  point plug expect at_least 12 V : loom.rear, loom.front
				                                               ^^^^^^^^^^ error chain-fault-twice: `loom.front` lies at two places of this chain. > Name it where it lies, once.
				  beyond loom.rear
				         ^^^^^^^^^ error chain-fault-twice: `loom.rear` lies at two places of this chain. > Name it where it lies, once.
				  because "x" source practice by "A" on 2026-03-02
				}
				test socket { measures V 0 .. 18 step 0.1 }
				chain falls {
				  point plug expect at_least 12 V : loom.rear
				  point socket expect at_least 11.9 V : loom.front
				  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning chain-limits-fall: `socket` is right at values at which `plug`, which lies before it, is wrong. > Give both the same limits, or the later point the narrower ones.
				  because "x" source practice by "A" on 2026-03-02
				}
				chain twice {
				  point fuse expect whole : loom.front
				  point fuse expect at_least 12 V : loom.rear
				        ^^^^ error point-twice: `fuse` is a point of this chain already. > Name another test, or take the point out.
				                    ^^^^^^^^^^^^^ error name-needed: `fuse` gives no number. > Write one of its values: `whole` or `blown`.
				  because "x" source practice by "A" on 2026-03-02
				}
				""");
	}
}
