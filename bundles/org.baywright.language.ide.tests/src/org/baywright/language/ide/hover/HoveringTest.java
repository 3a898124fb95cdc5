package org.baywright.language.ide.hover;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.model.Meaning;
import org.junit.jupiter.api.Test;

class HoveringTest {

	private static void hover(String marked, String word, String expected) {
		Cursor cursor = Cursor.in(marked);
		Hover hover = cursor.services().hover(Cursor.FILE, cursor.offset()).orElseThrow();
		assertEquals(word, cursor.text().substring(hover.offset(), hover.offset() + hover.length()));
		assertEquals(expected, hover.markdown().replace("\n\n", " | "));
	}

	@Test
	void aFaultWithItsRulesAndRepairs() {
		hover("rule a { given no_crank then confirms battery.fl@at }", "flat",
				"**fault** `battery.flat` | Battery flat | Fault of Battery, the cause in 30 jobs | Confirms it: a"
						+ " | Suspects it: lamp_dark | Clears it: lamp_dark | Repairs: recharge"
						+ " | Defined in names.bay; used 4 times.");
	}

	@Test
	void aTestWithItsEffort() {
		hover("rule a { run rest_@voltage }", "rest_voltage",
				"**test** `rest_voltage` | Battery voltage at rest | Results: 0.0 V to 18.0 V in steps of 0.1 V | In state: ignition off | Takes: 8 min | Who: anybody who knows the trade"
						+ " | Defined in names.bay; used once.");
		hover("rule a { run @lamp }", "lamp", "**test** `lamp` | Charge lamp | Results: lit, dark | Takes: 1 min | Who: anybody who knows the trade"
				+ " | Used by: lamp_dark | Defined in names.bay; used 2 times.");
	}

	@Test
	void whatAnInstrumentShowsBeyondItsRange() {
		String test = "test ohms { measures Ohm 0 .. 200 step 1 under minus over ol \"open line\" takes 1 min }\n";
		hover(test + "rule a { run ohms on ol@ : proves nothing }", "ol", "**value** `ol` | open line | Value of `ohms` | Defined in here.bay; used once.");
		hover(test + "rule a { run oh@ms }", "ohms", "**test** `ohms` | Results: 0 Ohm to 200 Ohm in steps of 1 Ohm, minus below that, open line above that"
				+ " | Takes: 1 min | Who: anybody who knows the trade | Defined in here.bay; used once.");
	}

	@Test
	void howPeersStandToARule() {
		String rule = "rule a@ \"Rule a\" { given no_crank then confirms battery.flat because \"So.\" source practice by \"P. Author\" on 2026-03-02 }\n";
		Cursor plain = Cursor.in(rule);
		String meaning = Meaning.fingerprint(plain.services().project().snapshot().rules().rule("a").orElseThrow());
		String reviews = "review a by \"A. Peer\" on 2026-03-03 agrees meaning \"" + meaning + "\"\nreview a by \"B. Peer\" on 2026-03-04 objects \"Too soon.\" meaning \""
				+ meaning + "\"\nreview a by \"C. Peer\" on 2026-03-05 agrees meaning \"00000001\"\n";
		hover(rule + reviews, "a", "**rule** `a` | Rule a | So. | By P. Author on 2026-03-02 | Agreed as it stands by A. Peer on 2026-03-03"
				+ " | Objection by B. Peer on 2026-03-04: Too soon. | C. Peer spoke of it as it was before | Defined in here.bay; used 3 times.");
	}

	@Test
	void aPictureIsNamedWithItsWords() {
		hover("part rela@y { picture \"relay.png\" \"Behind the panel\" fault stuck }", "relay",
				"**part** `relay` | Picture: Behind the panel (relay.png) | Faults: stuck | Defined in here.bay; not used.");
	}

	@Test
	void otherThings() {
		hover("law \"x\" : never @low_supply", "low_supply", "**code** `low_supply` | Supply voltage low"
				+ " | `U3003-16` (SAE J2012 / ISO 15031-6: network, failure type 16) | Kept by `bcm`, Body control module"
				+ " | Defined in names.bay; used once.");
		hover("law \"x\" : never bcm@ silent", "bcm", "**module** `bcm` | Body control module | Must answer in: ignition on"
				+ " | Codes: low_supply | Defined in names.bay; used 2 times.");
		hover("law \"x\" : never engine is diesel@", "diesel",
				"**value** `diesel` | 2.0 diesel | Value of `engine` | Defined in names.bay; used once.");
		hover("part p hazards charging@_gas { fault f }", "charging_gas", "**hazard** `charging_gas`"
				+ " | Gas from a charging battery | Air the place. | Defined in names.bay; used 2 times.");
		hover("law \"x\" : never bu@ilt below 2016", "built",
				"**trait** `built` | In `tarn`: year 2015 .. 2021 | Defined in names.bay; used once.");
	}

	@Test
	void wordsOfTheLanguage() {
		hover("rule a { bec@ause \"x\" }", "because", "**because** | The reason, in a sentence or two.");
		assertEquals(Optional.empty(), Cursor.in("rule a { because \"x@y\" }").services().hover(Cursor.FILE, 20));
	}

	@Test
	void whatIsSeenWithATestTellsItsEffort() {
		hover("test course { seen_with rest_voltage results steady, jumps }\nrule a { run cour@se }", "course",
				"**test** `course` | Results: steady, jumps | Seen with: Battery voltage at rest | In state: ignition off | Takes: 8 min | Who: anybody who knows the trade"
						+ " | Defined in here.bay; used once.");
	}

	@Test
	void howLongGettingToAValueTakes() {
		String state = "state net : awake, asleep \"All quiet\" takes 0.5 h, off takes 7 s\n";
		hover(state + "rule a { in n@et awake }", "net", "**state** `net` | Values: awake, asleep (All quiet), off | Takes: asleep 30 min, off 7 s"
				+ " | Defined in here.bay; used once.");
		hover(state + "rule a { in net asl@eep }", "asleep", "**value** `asleep` | All quiet | Value of `net` | Takes: 30 min | Defined in here.bay; used once.");
		hover(state + "test t { results a, b in net asleep }\nrule r { run t@ }", "t", "**test** `t` | Results: a, b | In state: net All quiet (30 min)"
				+ " | Who: anybody who knows the trade | Defined in here.bay; used once.");
	}

	@Test
	void aModuleThatSaysNothingTakesWhatTheWorkshopSays() {
		hover("workshop { sc@an each takes 4 min needs multimeter }", "scan",
				"**scan** | What reading modules takes: `each` of those that say nothing themselves, or `all` at once.");
		hover("workshop { scan each takes 4 min cost 2 needs multimeter }\nlaw \"x\" : never bcm@ silent", "bcm", "**module** `bcm` | Body control module"
				+ " | Must answer in: ignition on | Needs: Digital multimeter | Takes: 4 min | Costs: 2 | Codes: low_supply | Defined in names.bay; used 2 times.");
	}
}
