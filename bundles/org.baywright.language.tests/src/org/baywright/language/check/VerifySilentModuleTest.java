package org.baywright.language.check;

import org.baywright.analysis.check.VerifySilentModule;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link VerifySilentModule}: common practice: codes are cleared only in modules that answered; wake the network first. */
class VerifySilentModuleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifySilentModule.class);
	}

	@Test
	void withoutAStateNobodyKnowsWhetherItAnswers() {
		MarkedFlaws.check(VerifySilentModule.class, """
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
				    clear heater
				//  ^^^^^^^^^^^^ warning verify-silent-module: Module heater need not answer here, so clearing it may reach nothing; set ignition on first.
				    cycle ignition
				    read heater
				//  ^^^^^^^^^^^ warning verify-silent-module: Module heater need not answer here, so reading it may reach nothing; set ignition on first.
				    expect open absent
				  }
				}
				""");
	}

	@Test
	void aTestPutsTheVehicleIntoItsState() {
		MarkedFlaws.check(VerifySilentModule.class, """
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
				    repeat resistance
				    read heater
				//  ^^^^^^^^^^^ warning verify-silent-module: Module heater need not answer here, so reading it may reach nothing; set ignition on first.
				    expect open absent
				  }
				}
				""");
	}

	@Test
	void aModuleThatAlwaysAnswersNeedsNoState() {
		MarkedFlaws.check(VerifySilentModule.class, """
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
				    clear body
				    cycle ignition
				    read body
				    expect low absent
				  }
				}
				""");
	}
}
