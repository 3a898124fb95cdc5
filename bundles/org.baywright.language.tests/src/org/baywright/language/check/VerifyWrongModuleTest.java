package org.baywright.language.check;

import org.baywright.analysis.check.VerifyWrongModule;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link VerifyWrongModule}: common practice; a code is kept by the module that set it (ISO 14229-1, from memory). */
class VerifyWrongModuleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifyWrongModule.class);
	}

	@Test
	void noModuleWasRead() {
		MarkedFlaws.check(VerifyWrongModule.class, """
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
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-wrong-module: Code open is kept in module heater, but no module was read; read heater first.
				  }
				}
				""");
	}

	@Test
	void theModuleReadLastCounts() {
		MarkedFlaws.check(VerifyWrongModule.class, """
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
				    clear heater  clear body
				    cycle ignition
				    read body
				    expect low absent
				    read heater
				    expect open absent
				    expect low absent
				//  ^^^^^^^^^^^^^^^^^ error verify-wrong-module: Code low is kept in module body, but module heater was read last; read body first.
				  }
				}
				""");
	}

	@Test
	void theRightModuleIsFine() {
		MarkedFlaws.check(VerifyWrongModule.class, """
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
				    read body
				    read heater
				    expect open absent
				  }
				}
				""");
	}

	@Test
	void allCodesThatOneReadingConcernsAreToldOnce() {
		MarkedFlaws.check(VerifyWrongModule.class, """
				family dunlin
				state ignition : off, on
				module heater
				module body
				code open on heater = raw "H 13"
				code short on heater = raw "H 14"
				part element { fault open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify { clear heater  cycle ignition  read body  expect open absent  expect short absent }
				//                                                  ^^^^^^^^^^^^^^^^^^ error verify-wrong-module: Codes open and short are kept in module heater, but module body was read last; read heater first.
				//   also: line 11 (code short)
				}
				""");
	}
}
