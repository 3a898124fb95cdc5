package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The status byte of a code. Meaning of the bits: ISO 14229-1, Annex D, "DTCStatusMask and statusOfDTC bit definitions"
 *: bit 0 testFailed, 1 testFailedThisOperationCycle, 2 pendingDTC, 3 confirmedDTC, 4
 * testNotCompletedSinceLastClear, 5 testFailedSinceLastClear, 6 testNotCompletedThisOperationCycle, 7
 * warningIndicatorRequested. The bytes are worked out from these.
 */
class CodeStatusTest {

	@ParameterizedTest
	@CsvSource({ "0x50, UNTESTED, right after clearing: bits 4 and 6 are set and nothing else", //
			"0x00, ABSENT, the test has run and passed in this cycle", //
			"0x40, ABSENT, passed in an earlier cycle and not run in this one", //
			"0x20, ABSENT, failed once since clearing and aged out of pending", //
			"0x27, ACTIVE, failing in this cycle for the first time and not confirmed yet", //
			"0x26, PENDING, failed in this cycle and passes now", //
			"0x64, PENDING, failed in the last cycle and not run in this one", //
			"0x2F, ACTIVE, confirmed and failing", //
			"0xAF, ACTIVE, the same with the warning lamp on", //
			"0x2E, STORED, confirmed and passing again", //
			"0x28, STORED, confirmed and passed for a whole cycle", //
			"0x08, STORED, confirmed and nothing else told" })
	void saysWhatTheBitsMean(String status, String expected, String why) {
		assertEquals(CodeReading.valueOf(expected), CodeStatus.ofByte(Integer.decode(status)), why);
	}

	/** Each of the 256 bytes, by the bits as the standard ranks them: what fails now, what is confirmed, what is pending. */
	@Test
	void everyByteHasOneState() {
		for (int status = 0; status < 256; status++) {
			String bits = String.format("%8s", Integer.toBinaryString(status)).replace(' ', '0');
			CodeReading expected = bits.matches(".......1") ? CodeReading.ACTIVE : bits.matches("....1...") ? CodeReading.STORED
					: bits.matches(".....1..") ? CodeReading.PENDING : bits.matches("...1....") ? CodeReading.UNTESTED : CodeReading.ABSENT;
			assertEquals(expected, CodeStatus.ofByte(status), bits);
		}
	}

	@Test
	void refusesWhatIsNoByte() {
		assertThrows(IllegalArgumentException.class, () -> CodeStatus.ofByte(-1));
		assertThrows(IllegalArgumentException.class, () -> CodeStatus.ofByte(256));
	}
}
