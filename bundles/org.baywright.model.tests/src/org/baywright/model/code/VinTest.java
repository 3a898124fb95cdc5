package org.baywright.model.code;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VinTest {

	// 49 CFR 565.15(c), tables III to V: values of letters, weights, rest of the division by 11. Published examples.
	@ParameterizedTest
	@CsvSource({ "1G4AH59H45G118341, 4", "1M8GDM9AXKP042788, X", "1J9RP1A36A1644345, 6", "5GZCZ43D13S812715, 1",
			"11111111111111111, 1" })
	void computesTheCheckDigit(String vin, char digit) {
		assertEquals(digit, Vin.checkDigit(vin));
		assertTrue(Vin.hasCheckDigit(vin));
	}

	@Test
	void findsAWrongCheckDigit() {
		assertEquals('X', Vin.checkDigit("SGZCZ43D13S812715"));
		assertFalse(Vin.hasCheckDigit("SGZCZ43D13S812715"));
	}

	@Test
	void findsEveryChangeOfOneDigit() {
		String vin = "1M8GDM9AXKP042788";
		for (int i = 0; i < vin.length(); i++) {
			for (char c = '0'; c <= '9'; c++) {
				if (Character.isDigit(vin.charAt(i)) && c != vin.charAt(i)) {
					assertFalse(Vin.hasCheckDigit(vin.substring(0, i) + c + vin.substring(i + 1)));
				}
			}
		}
	}

	// ISO 3779: 17 characters, Roman capitals without I, O, Q, and Arabic digits.
	@ParameterizedTest
	@ValueSource(strings = { "", "1M8GDM9AXKP04278", "1M8GDM9AXKP0427888", "IM8GDM9AXKP042788", "1M8GDM9AXKPO42788",
			"1M8GDM9AXKQ042788", "1M8GDM9A-KP042788" })
	void refusesOtherForms(String vin) {
		assertTrue(Vin.wrong(vin).isPresent());
		assertThrows(IllegalArgumentException.class, () -> Vin.checkDigit(vin));
	}

	@Test
	void smallLettersAreTakenAsLarge() {
		assertEquals(Optional.empty(), Vin.wrong("1m8gdm9axkp042788"));
		assertTrue(Vin.hasCheckDigit("1m8gdm9axkp042788"));
	}

	@ParameterizedTest
	@CsvSource({ "WZZT3, true", "WZZ??1, true", "W, true", "'', false", "WIZ, false", "W Z, false",
			"123456789012345678, false" })
	void patternsAreBeginnings(String pattern, boolean right) {
		assertEquals(right, Vin.wrongPattern(pattern).isEmpty());
	}

	@ParameterizedTest
	@CsvSource({ "WZZT3, true", "wzzt3, true", "WZZ?3, true", "WZZT4, false", "WZZT3ABCDEFGHJKLM, false" })
	void matchesBeginnings(String pattern, boolean matches) {
		assertEquals(matches, Vin.matches("WZZT3A000G1000001", pattern));
	}

	@ParameterizedTest
	@CsvSource({ "WZZT3, WZZ?3A, WZZT3A", "wzz, W?ZT, WZZT", "?A, B, BA", "W??, W, W??", "WZA, WZB,", "WA?1, W?21, WA21", "WA?1, W?22," })
	void whatTwoBeginningsShare(String one, String two, String both) {
		assertEquals(Optional.ofNullable(both), Vin.both(one, two));
		assertEquals(Optional.ofNullable(both), Vin.both(two, one));
	}

	@ParameterizedTest
	@CsvSource({ "WZZ, WZZT, true", "WZZT, WZZ, false", "WZ?, WZ, true", "W?Z, WZZ, true", "WZZ, W?Z, false", "wzz, WZZ, true",
			"WZA, WZB, false", "'', W, true" })
	void whichBeginningIsTheWiderOne(String wide, String narrow, boolean covers) {
		assertEquals(covers, Vin.covers(wide, narrow));
	}
}
