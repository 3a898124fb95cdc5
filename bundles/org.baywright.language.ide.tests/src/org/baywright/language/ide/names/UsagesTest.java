package org.baywright.language.ide.names;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import org.baywright.language.ide.testing.Cursor;
import org.junit.jupiter.api.Test;

class UsagesTest {

	/** Returns the places as {@code file:name}, a declaration in brackets. */
	private static String say(Cursor cursor, List<Use> uses) {
		return uses.stream().map(use -> {
			String text = cursor.services().project().source(use.file()).orElseThrow().text();
			String name = text.substring(use.offset(), use.offset() + use.length());
			return use.declaration() ? "[" + use.file() + ":" + name + "]" : use.file() + ":" + name;
		}).collect(Collectors.joining(" "));
	}

	private static void references(String marked, String expected) {
		Cursor cursor = Cursor.in(marked);
		assertEquals(expected, say(cursor, cursor.services().references(Cursor.FILE, cursor.offset(), true)));
	}

	private static void definition(String marked, String expected) {
		Cursor cursor = Cursor.in(marked);
		List<Use> found = cursor.services().definition(Cursor.FILE, cursor.offset());
		assertEquals(expected, found.stream().map(use -> use.file() + " " + use.line()).collect(Collectors.joining("; ")));
	}

	@Test
	void declarationsInOtherFiles() {
		definition("rule a { given no_cr@ank }", "names.bay sign no_crank \"Engine does not crank\"");
		definition("rule a { run lamp@ }",
				"names.bay test lamp \"Charge lamp\" { results lit, dark  takes 1 min }");
		definition("rule a { then confirms battery.fl@at }", "names.bay fault flat \"Battery flat\" seen 30");
		definition("rule a { then confirms batt@ery.flat }", "names.bay part battery \"Battery\" hazards charging_gas {");
		definition("rule a { for @tarn }", "names.bay family tarn \"Tarn T3 van\" {");
		definition("rule a { run lamp on @lit : proves nothing }",
				"names.bay test lamp \"Charge lamp\" { results lit, dark  takes 1 min }");
		definition("rule a { in ignition cran@king }", "names.bay state ignition : off, on, cranking");
		definition("rule a { where engine is petrol given nowhere@ }", "");
		definition("rule a { becau@se \"x\" }", "");
	}

	@Test
	void aTraitMayBeDeclaredInSeveralFamilies() {
		definition("family f like tarn { trait engine : petrol }\nrule a { for tarn where eng@ine is petrol }",
				"here.bay family f like tarn { trait engine : petrol }; names.bay trait engine : diesel \"2.0 diesel\", petrol, electric");
	}

	@Test
	void usesOfAFaultAndOfItsPart() {
		references("rule a { then confirms battery.fl@at }", "here.bay:flat [names.bay:flat] names.bay:flat names.bay:flat names.bay:flat");
		references("test t { at batt@ery results a, b }", "here.bay:battery [names.bay:battery] names.bay:battery names.bay:battery names.bay:battery");
		references("rule a { then clears battery . open@_cell }", "here.bay:open_cell [names.bay:open_cell]");
	}

	@Test
	void usesOfValuesBelongToTheirOwner() {
		references("test other { results lit, out }\nrule a { run lamp on l@it : proves nothing }",
				"here.bay:lit [names.bay:lit] names.bay:lit");
		references("test other { results l@it, out }\nlaw \"x\" : never other is lit and lamp is lit",
				"[here.bay:lit] here.bay:lit");
	}

	@Test
	void namesAreFoundBehindASyntaxError() {
		references("rule broken { given ,, \nrule a {\n  run ;; \n}\nrule b { run la@mp }",
				"here.bay:lamp [names.bay:lamp] names.bay:lamp");
	}

	@Test
	void theTargetSaysWhatItIs() {
		Cursor cursor = Cursor.in("rule a { given bcm@ silent }");
		assertEquals("module", cursor.services().target(Cursor.FILE, cursor.offset()).orElseThrow().word());
		assertEquals("bcm", cursor.services().prepareRename(Cursor.FILE, cursor.offset()).map(use -> cursor.text()
				.substring(use.offset(), use.offset() + use.length())).orElse(""));
	}

	@Test
	void occurrencesStayInTheFile() {
		Cursor cursor = Cursor.in("sign he@re\nlaw \"x\" : when here then no_crank\n");
		assertEquals("[here.bay:here] here.bay:here", say(cursor, cursor.services().occurrences(Cursor.FILE, cursor.offset())));
	}
}
