package org.baywright.language.check;

import org.baywright.analysis.check.VerifyWithoutOwnTest;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * {@link VerifyWithoutOwnTest}: common practice; in ISO 14229-1 a cleared code counts as "test not completed since last
 * clear" (bit name seen) until the module has tested again.
 */
class VerifyWithoutOwnTestTest {

	private static final String VAN = """
			family a { cycle ignition : on, wait 30 s, off, on }
			family b
			state ignition : off, on, running
			module brakes
			code no_pulses on brakes = raw "C 1" runs in ignition on, in ignition running, drive 20 km/h .. 60 km/h for 1 min
			code no_heat on brakes = raw "C 2" runs in ignition running, wait 1 h, do "Press the pedal."
			part sensor { fault dead }
			test pedal { results good, bad  wait 2 h  prepare "Press the pedal." }
			repair new_sensor {
			  fixes sensor.dead
			  steps "Replace it."
			  verify {
			    clear brakes
			    cycle ignition
			    %s
			    read brakes
			    expect %s absent
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifyWithoutOwnTest.class);
	}

	/** The cycle of family a does not run the engine, that of b goes through all values. */
	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "drive 30 km/h .. 60 km/h for 2 min | no_pulses |",
			"drive 30 km/h .. 61 km/h for 2 min | no_pulses | “Drive at a speed 20 km/h to 60 km/h for 1 min.”",
			"drive 20 km/h .. 60 km/h for 50 s | no_pulses | “Drive at a speed 20 km/h to 60 km/h for 1 min.”",
			"drive below 0 km/h for 1 min | no_pulses | “Drive at a speed 20 km/h to 60 km/h for 1 min.”",
			"drive for 2 min | no_pulses | “Drive at a speed 20 km/h to 60 km/h for 1 min.”",
			"set ignition running repeat pedal | no_heat |", "repeat pedal | no_heat | ignition running",
			"set ignition running wait 90 min | no_heat | “Press the pedal.”",
			"set ignition running do \"Press the pedal.\" wait 59 min | no_heat | “Wait 1 h.”" })
	void whatTheModuleNeedsLiesBetweenClearAndRead(String between, String code, String lacking) {
		String found = lacking == null ? "" : "//  " + "^".repeat(("expect " + code + " absent").length())
				+ " error verify-without-own-test: That code " + code + " is absent proves nothing here: between clear and read,"
				+ " module brakes has not had " + lacking + ", which it needs to test for it.\n";
		MarkedFlaws.check(VerifyWithoutOwnTest.class, VAN.formatted(between, code) + found + "  }\n}\n");
	}

	@Test
	void whatWasDoneBeforeClearingIsForgotten() {
		MarkedFlaws.check(VerifyWithoutOwnTest.class, """
				family b
				state ignition : off, on
				module brakes
				code no_pulses on brakes = raw "C 1" runs wait 1 h
				part sensor { fault dead }
				repair new_sensor {
				  fixes sensor.dead
				  steps "Replace it."
				  verify {
				    wait 2 h
				    clear brakes
				    cycle ignition
				    read brakes
				    wait 2 h
				    expect no_pulses absent
				//  ^^^^^^^^^^^^^^^^^^^^^^^ error verify-without-own-test: That code no_pulses is absent proves nothing here: between clear and read, module brakes has not had “Wait 1 h.”, which it needs to test for it.
				  }
				}
				""");
	}
}
