package org.baywright.language.ide.hover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.services.BayGrammarAccess;
import org.eclipse.xtext.GrammarUtil;
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
				"**test** `rest_voltage` | Battery voltage at rest | 0.0 V .. 18.0 V, read to 0.1 V | Takes 8 min, skill basic"
						+ " | In: ignition off | Defined in names.bay; used once.");
		hover("rule a { run @lamp }", "lamp", "**test** `lamp` | Charge lamp | Results: lit, dark | Takes 1 min, skill basic"
				+ " | Used by: lamp_dark | Defined in names.bay; used 2 times.");
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
	void everyExplainedWordIsAWordOfTheLanguage() {
		Set<String> unknown = new TreeSet<>(WordHelp.words());
		unknown.removeAll(GrammarUtil.getAllKeywords(
				BayStandaloneSetup.injector().getInstance(BayGrammarAccess.class).getGrammar()));
		assertEquals(Set.of(), unknown);
		assertTrue(WordHelp.words().size() > 80);
	}
}
