package org.baywright.model.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.TreeSet;
import org.fhir.ucum.Decimal;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsTest {

	private final Units units = Units.standard();

	// SI brochure (9th edition): prefixes, minute, hour, litre, bar, degree Celsius by K - 273.15.
	// NIST SP 811 appendix B: pound-force per square inch 6894.757 Pa, pound-force foot 1.355818 N.m, mile 1.609344 km.
	// The Fahrenheit values are the fixed points of the scale: 32 ice, 212 steam, and -40 where both scales meet.
	@ParameterizedTest
	@CsvSource({ "212, [degF], Cel, 100", "32, degF, degC, 0", "-40, degC, degF, -40", "100, \u00B0C, \u00B0F, 212",
			"0, degC, K, 273.15", "400, mV, V, 0.4", "0.4, V, mV, 400", "12.6, V, V, 12.6", "4.7, kOhm, \u03A9, 4700",
			"50, mA, A, 0.05", "2.3, bar, kPa, 230", "1, bar, Pa, 100000", "90, min, h, 1.5", "1, h, s, 3600",
			"3, l/min, l/h, 180", "60, rpm, Hz, 1", "1, mph, km/h, 1.609344", "0.1, kOhm/V, Ohm/V, 100",
			"3.6, km/h, m/s, 1", "1, kWh, J, 3600000" })
	void convertsExactly(String value, String from, String to, String expected) throws UnitException {
		assertEquals(0, new BigDecimal(expected).compareTo(units.convert(new BigDecimal(value), from, to)));
	}

	@ParameterizedTest
	@CsvSource({ "1, [psi], Pa, 6894.757", "1, [lbf_av].[ft_i], N.m, 1.35582", "1, lbf.ft, N.m, 1.355818",
			"30, psi, kPa, 206.8427" })
	void agreesWithPrintedFactors(String value, String from, String to, String printed) throws UnitException {
		BigDecimal expected = new BigDecimal(printed);
		BigDecimal halfOfLastDigit = BigDecimal.valueOf(5, expected.scale() + 1);
		BigDecimal found = units.convert(new BigDecimal(value), from, to);
		assertTrue(found.subtract(expected).abs().compareTo(halfOfLastDigit) <= 0, found::toPlainString);
	}

	@Test
	void thereAndBackIsTheSameNumber() throws UnitException {
		BigDecimal limit = new BigDecimal("12.4");
		for (String unit : new String[] { "mV", "kV", "uV" }) {
			assertEquals(limit, units.convert(units.convert(limit, "V", unit), unit, "V"));
		}
	}

	// The library's own converter as a second implementation; it rounds to the digits of each definition it meets.
	@Test
	void agreesWithTheLibrarysConverter() throws Exception {
		UcumService ucum;
		try (InputStream in = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
			ucum = new UcumEssenceService(in);
		}
		String[][] pairs = { { "mi", "[mi_i]", "m", "m" }, { "kOhm", "kOhm", "Ohm", "Ohm" }, { "hp", "[HP]", "W", "W" },
				{ "kg/h", "kg/h", "g/s", "g/s" }, { "mmHg", "mm[Hg]", "Pa", "Pa" }, { "deg", "deg", "rad", "rad" } };
		for (String[] pair : pairs) {
			BigDecimal theirs = new BigDecimal(
					ucum.convert(new Decimal("7.0000000000000000"), pair[1], pair[3]).asDecimal());
			BigDecimal ours = units.convert(new BigDecimal(7), pair[0], pair[2]);
			BigDecimal off = ours.subtract(theirs).abs();
			assertTrue(off.compareTo(ours.movePointLeft(3)) < 0, pair[0] + ": " + ours + " against " + theirs);
		}
	}

	@Test
	void everySpellingStandsForACodeThatUcumKnows() throws Exception {
		UcumService ucum;
		try (InputStream in = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
			ucum = new UcumEssenceService(in);
		}
		for (String code : new TreeSet<>(Spellings.ALL.values())) {
			assertEquals(null, ucum.validate(code), code);
		}
	}

	@ParameterizedTest
	@CsvSource({ "V, Ohm", "A, V", "degC, bar", "V, ''", "%, V", "rpm, km/h", "Ohm/V, Ohm", "dB, V" })
	void keepsKindsApart(String one, String other) {
		assertFalse(units.comparable(one, other));
		assertThrows(UnitException.class, () -> units.convert(BigDecimal.ONE, one, other));
	}

	@ParameterizedTest
	@CsvSource({ "V, mV", "degC, degF", "psi, bar", "N.m, lbf.ft", "rpm, Hz", "%, ''", "Ohm, V/A" })
	void seesWhatIsOfOneKind(String one, String other) {
		assertTrue(units.comparable(one, other));
	}

	@Test
	void aPlainNumberIsAUnitToo() throws UnitException {
		assertEquals(Optional.of(Unit.NONE), units.parse(""));
		assertEquals(BigDecimal.TEN, units.convert(BigDecimal.TEN, "", ""));
	}

	@ParameterizedTest
	@ValueSource(strings = { "Kpa", "volts", "xyz", "V V", "/", "..", "[", "1e" })
	void unknownUnitsAreUnknown(String text) {
		assertEquals(Optional.empty(), units.parse(text));
		assertFalse(units.comparable(text, "V"));
	}

	@ParameterizedTest
	@CsvSource({ "Kpa, kPa", "volts, V", "KOhm, kOhm", "Ohms, Ohm", "percent, %", "Celsius, degC", "mbaar, mbar" })
	void suggestsWhatWasMeant(String unknown, String meant) {
		assertEquals(Optional.of(meant), units.suggest(unknown));
	}

	@Test
	void suggestsNothingForNonsense() {
		assertEquals(Optional.empty(), units.suggest("xyzzy"));
	}
}
