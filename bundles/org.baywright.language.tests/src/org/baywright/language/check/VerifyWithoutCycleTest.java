package org.baywright.language.check;

import org.baywright.analysis.check.VerifyWithoutCycle;
import org.baywright.language.testing.MarkedFindings;
import org.junit.jupiter.api.Test;

/**
 * {@link VerifyWithoutCycle}: common practice; in ISO 14229-1 a cleared code counts as "test not completed since last clear"
 * (bit name seen), status 0x50 after clearing (seen), until the module has tested again.
 */
class VerifyWithoutCycleTest {

	@Test
	void theFlawedFile() {
		MarkedFindings.checkFlawed(VerifyWithoutCycle.class);
	}

	@Test
	void clearCycleReadIsFine() {
		MarkedFindings.check(VerifyWithoutCycle.class, """
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
				    set ignition on
				    clear heater
				    cycle ignition
				    read heater
				    expect open absent
				  }
				}
				""");
	}

	@Test
	void withoutClearingTheCodeMayBeAbsentAnyway() {
		MarkedFindings.check(VerifyWithoutCycle.class, """
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
				    set ignition on
				    cycle ignition
				    read heater
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was not cleared before; clear it, cycle, then read it.
				  }
				}
				""");
	}

	@Test
	void clearingAnotherModuleDoesNotCount() {
		MarkedFindings.check(VerifyWithoutCycle.class, """
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
				    set ignition on
				    clear body
				    cycle ignition
				    read heater
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was not cleared before; clear it, cycle, then read it.
				  }
				}
				""");
	}

	@Test
	void aCycleBeforeTheClearingDoesNotCount() {
		MarkedFindings.check(VerifyWithoutCycle.class, """
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
				    set ignition on
				    cycle ignition
				    clear heater
				    read heater
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was read before a cycle let it test itself again; cycle between clearing and reading.
				  }
				}
				""");
	}

	@Test
	void aCycleAfterTheReadingDoesNotCount() {
		MarkedFindings.check(VerifyWithoutCycle.class, """
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
				    set ignition on
				    clear heater
				    read heater
				    cycle ignition
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was read before a cycle let it test itself again; cycle between clearing and reading.
				  }
				}
				""");
	}

	@Test
	void aCodeThatMustComeBackProvesSomethingAtOnce() {
		MarkedFindings.check(VerifyWithoutCycle.class, """
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
				    set ignition on
				    clear heater
				    read heater
				    expect open present
				  }
				}
				""");
	}
}
