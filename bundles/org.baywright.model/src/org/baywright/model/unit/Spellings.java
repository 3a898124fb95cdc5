package org.baywright.model.unit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** How the trade spells units, and the UCUM code of each. */
final class Spellings {

	/** Every spelling with its code, in a fixed order, preferred spellings first. */
	static final Map<String, String> ALL = all();

	/** Words that people write for a unit but that the language does not take, with the spelling it takes. */
	static final Map<String, String> WORDS = words();

	private Spellings() {
	}

	private static Map<String, String> all() {
		Map<String, String> map = new LinkedHashMap<>();
		same(map, "V mV uV kV A mA uA kA Ohm mOhm kOhm MOhm W mW kW F mF uF nF pF H mH uH Hz kHz MHz S");
		same(map, "Pa hPa kPa MPa bar mbar K s ms us min h d m mm cm um km g kg mg t l L ml mL N kN J kJ");
		same(map, "% deg N.m km/h m/s m/s2 l/min l/h g/s kg/h mg/s V/s V/A Ohm/V V/V A.h W.h kW.h bar/min kPa/min bar/s");
		same(map, "Ohm/m Ohm/km mV/V mV/A mm/s l/s m3/h g/km mm2 cm2 m2 m3 cm3 N/mm2 dB lx cd lm");
		map.put("\u03A9", "Ohm");
		map.put("m\u03A9", "mOhm");
		map.put("k\u03A9", "kOhm");
		map.put("M\u03A9", "MOhm");
		map.put("\u03A9/V", "Ohm/V");
		map.put("\u2126", "Ohm");
		map.put("m\u2126", "mOhm");
		map.put("k\u2126", "kOhm");
		map.put("M\u2126", "MOhm");
		map.put("ohm", "Ohm");
		map.put("kohm", "kOhm");
		for (String micro : new String[] { "\u00B5", "\u03BC" }) {
			for (String unit : new String[] { "V", "A", "F", "H", "s", "m" }) {
				map.put(micro + unit, "u" + unit);
			}
		}
		map.put("degC", "Cel");
		map.put("\u00B0C", "Cel");
		map.put("Cel", "Cel");
		map.put("degF", "[degF]");
		map.put("\u00B0F", "[degF]");
		map.put("[degF]", "[degF]");
		map.put("degC/min", "Cel/min");
		map.put("K/min", "K/min");
		map.put("\u00B0", "deg");
		map.put("psi", "[psi]");
		map.put("inHg", "[in_i'Hg]");
		map.put("mmHg", "mm[Hg]");
		map.put("rpm", "/min");
		map.put("/min", "/min");
		map.put("Nm", "N.m");
		map.put("lbf.ft", "[lbf_av].[ft_i]");
		map.put("mph", "[mi_i]/h");
		map.put("mi", "[mi_i]");
		map.put("ft", "[ft_i]");
		map.put("inch", "[in_i]");
		map.put("lb", "[lb_av]");
		map.put("hp", "[HP]");
		map.put("Ah", "A.h");
		map.put("Wh", "W.h");
		map.put("kWh", "kW.h");
		map.put("ppm", "[ppm]");
		return Collections.unmodifiableMap(map);
	}

	private static void same(Map<String, String> map, String codes) {
		for (String code : codes.split(" ")) {
			map.put(code, code);
		}
	}

	private static Map<String, String> words() {
		Map<String, String> map = new LinkedHashMap<>();
		map.put("volt", "V");
		map.put("volts", "V");
		map.put("millivolt", "mV");
		map.put("millivolts", "mV");
		map.put("amp", "A");
		map.put("amps", "A");
		map.put("ampere", "A");
		map.put("amperes", "A");
		map.put("milliamp", "mA");
		map.put("milliamps", "mA");
		map.put("ohms", "Ohm");
		map.put("kilohm", "kOhm");
		map.put("kilohms", "kOhm");
		map.put("megohm", "MOhm");
		map.put("celsius", "degC");
		map.put("fahrenheit", "degF");
		map.put("sec", "s");
		map.put("secs", "s");
		map.put("second", "s");
		map.put("seconds", "s");
		map.put("mins", "min");
		map.put("minute", "min");
		map.put("minutes", "min");
		map.put("hour", "h");
		map.put("hours", "h");
		map.put("hr", "h");
		map.put("hrs", "h");
		map.put("kph", "km/h");
		map.put("kmh", "km/h");
		map.put("percent", "%");
		map.put("degree", "deg");
		map.put("degrees", "deg");
		map.put("hertz", "Hz");
		map.put("litre", "l");
		map.put("liter", "l");
		map.put("watt", "W");
		map.put("watts", "W");
		return Collections.unmodifiableMap(map);
	}
}
