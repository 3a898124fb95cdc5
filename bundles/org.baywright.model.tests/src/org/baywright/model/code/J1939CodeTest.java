package org.baywright.model.code;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class J1939CodeTest {

	// SAE J1939-73, DM1, conversion method 0; from memory.
	@Test
	void packsAsTheStandardDoes() {
		assertArrayEquals(new byte[] { (byte) 0xB8, 0x04, 0x03, 0x0A }, new J1939Code(1208, 3).pack(10));
		assertArrayEquals(new byte[] { 0x6E, 0x00, 0x00, 0x01 }, new J1939Code(110, 0).pack(1));
	}

	@ParameterizedTest
	@CsvSource({ "0, 0, 0", "110, 0, 1", "1208, 3, 10", "65536, 31, 127", "524287, 31, 127", "520192, 19, 64" })
	void unpacksWhatItPacked(int spn, int fmi, int count) {
		J1939Code code = new J1939Code(spn, fmi);
		assertEquals(new J1939Code.Counted(code, count), J1939Code.unpack(code.pack(count)));
	}

	@ParameterizedTest
	@CsvSource({ "524288, 0", "-1, 0", "0, 32", "0, -1" })
	void refusesWhatTheBitsCannotHold(int spn, int fmi) {
		J1939Code code = new J1939Code(spn, fmi);
		assertEquals(true, code.wrong().isPresent());
		assertThrows(IllegalArgumentException.class, () -> code.pack(0));
	}

	@Test
	void theLimitsThemselvesAreRight() {
		assertEquals(Optional.empty(), new J1939Code(524_287, 31).wrong());
		assertThrows(IllegalArgumentException.class, () -> new J1939Code(1, 1).pack(128));
	}

	// SAE J1939-73, list of failure modes: 22 to 30 reserved, 31 condition exists.
	@ParameterizedTest
	@CsvSource({ "21, false", "22, true", "30, true", "31, false" })
	void knowsReservedFailureModes(int fmi, boolean reserved) {
		assertEquals(reserved, new J1939Code(1, fmi).reserved());
	}

	@ParameterizedTest
	@ValueSource(ints = { 0, 3, 5 })
	void readsFourBytesOnly(int length) {
		assertThrows(IllegalArgumentException.class, () -> J1939Code.unpack(new byte[length]));
	}

	@Test
	void doesNotGuessOlderOrders() {
		assertThrows(IllegalArgumentException.class, () -> J1939Code.unpack(new byte[] { 1, 0, 0, (byte) 0x81 }));
	}
}
