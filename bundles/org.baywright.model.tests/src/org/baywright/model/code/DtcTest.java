package org.baywright.model.code;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DtcTest {

	// SAE J2012 / ISO 15031-6, two-byte form; from memory.
	@ParameterizedTest
	@CsvSource({ "0143, P0143", "0234, P0234", "CD02, U0D02", "C100, U0100", "4035, C0035", "9234, B1234" })
	void readsAndWritesTheTwoByteForm(String hex, String text) {
		int bytes = Integer.parseInt(hex, 16);
		assertEquals(Optional.of(new Dtc(text, "")), Dtc.fromBytes(bytes));
		assertEquals(bytes, new Dtc(text, "").toBytes());
	}

	@Test
	void everyTwoBytesButZeroAreACodeOfTheRightForm() {
		assertEquals(Optional.empty(), Dtc.fromBytes(0)); // from memory: 0000 is no code
		for (int bytes = 1; bytes <= 0xFFFF; bytes++) {
			Dtc code = Dtc.fromBytes(bytes).orElseThrow();
			assertEquals(Optional.empty(), Dtc.wrongCode(code.code()));
			assertEquals(bytes, code.toBytes());
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "P", "P014", "P01433", "X0143", "P4143", "P0G43", "10143", "P0000" })
	void refusesOtherForms(String text) {
		assertTrue(Dtc.wrongCode(text).isPresent());
		assertThrows(IllegalStateException.class, () -> new Dtc(text, "").toBytes());
	}

	@ParameterizedTest
	@CsvSource({ "16, true", "1A, true", "ff, true", "1, false", "1G, false", "'', false", "123, false" })
	void theFailureTypeIsOneByte(String sub, boolean right) {
		assertEquals(right, Dtc.wrongSub(sub).isEmpty());
	}

	@Test
	void smallLettersAreWrittenLarge() {
		assertEquals("U0D02-1A", Dtc.of("u0d02", "1a").display());
	}

	@Test
	void onlyTwoBytesAreRead() {
		assertThrows(IllegalArgumentException.class, () -> Dtc.fromBytes(0x10000));
		assertThrows(IllegalArgumentException.class, () -> Dtc.fromBytes(-1));
	}
}
