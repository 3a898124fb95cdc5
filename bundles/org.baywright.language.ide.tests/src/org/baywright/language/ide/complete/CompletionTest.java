package org.baywright.language.ide.complete;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.workspace.RuleProject;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.Test;

class CompletionTest {

	private static List<Proposal> at(String marked) {
		Cursor cursor = Cursor.in(marked);
		return cursor.services().complete(Cursor.FILE, cursor.offset());
	}

	private static List<String> labels(String marked) {
		return at(marked).stream().map(Proposal::label).toList();
	}

	private static void expect(String marked, String... labels) {
		assertEquals(List.of(labels), labels(marked));
	}

	private static void begins(String marked, String... labels) {
		List<String> found = labels(marked);
		assertEquals(List.of(labels), found.subList(0, Math.min(labels.length, found.size())), () -> "all: " + found);
	}

	/** Chooses the proposal with a label and returns the text with the cursor behind it. */
	private static String chosen(String marked, String label) {
		Cursor cursor = Cursor.in(marked);
		Proposal proposal = at(marked).stream().filter(found -> found.label().equals(label)).findFirst()
				.orElseThrow(() -> new AssertionError(label + " is not among " + labels(marked)));
		String text = cursor.text().substring(0, proposal.replaceOffset()) + proposal.text() + "@"
				+ cursor.text().substring(proposal.replaceOffset() + proposal.replaceLength());
		return text;
	}

	@Test
	void anEmptyFileOffersWholeElements() {
		begins("@", "rule", "rule with a band", "rule without a test", "rule that refers", "chain", "test", "test with results",
				"sign");
		expect("si@", "sign", "sign_off");
		begins("tes@", "test", "test with results");
	}

	@Test
	void aRuleOffersItsMissingLinesInTheirOrder() {
		begins("rule a {\n  @\n}\n", "for", "given", "in", "run", "then", "because", "source", "by");
		expect("rule a {\n  given no_crank\n  run lamp\n  on dark : suspects battery.flat\n  because \"x\"\n  b@\n}", "by");
		assertFalse(labels("rule a {\n  @\n  source practice\n}").contains("source"), "what stands below the cursor is there too");
	}

	@Test
	void namesOfTheRightKindOnly() {
		expect("rule a {\n  run @\n}", "lamp", "rest_voltage");
		expect("rule a {\n  for @\n}", "every", "heron", "tarn");
		expect("rule a {\n  then confirms @\n}", "battery.flat", "battery.open_cell");
		expect("rule a {\n  then confirms battery.o@\n}", "battery.open_cell");
		expect("repair r { fixes @ }", "battery.flat", "battery.open_cell");
		expect("test t { needs @ }", "multimeter");
		expect("part p hazards @ {}", "charging_gas");
		expect("repair r { caution @ }", "charging_gas");
		expect("code c on @", "bcm");
		expect("family f like @", "heron", "tarn");
		expect("review @", "lamp_dark");
	}

	@Test
	void conditionsOfferAllThatTheyCanSpeakOf() {
		expect("rule a {\n  given @\n}", "no_crank", "lamp", "rest_voltage", "low_supply", "bcm", "built", "doors", "engine", "battery.flat", "battery.open_cell", "not");
		expect("law \"x\" : when @", "no_crank", "lamp", "rest_voltage", "low_supply", "bcm", "built", "doors", "engine", "not");
		expect("rule a {\n  for tarn where @\n}", "built", "engine", "not");
		expect("job \"j\" {\n  on heron with @\n}", "doors");
	}

	@Test
	void aTitleFindsTheNameToo() {
		expect("rule a {\n  given engine_d@\n}");
		expect("rule a {\n  run charge@\n}", "lamp");
	}

	@Test
	void predicatesFitTheKind() {
		expect("law \"x\" : when no_crank @", "absent", "and", "or", "present", "then", "unexplained", "not");
		expect("law \"x\" : when low_supply @", "absent", "active", "and", "missing", "or", "pending", "present", "stored", "then", "unread", "untested", "not");
		expect("law \"x\" : when bcm @", "and", "answers", "or", "silent", "then", "not");
		expect("law \"x\" : when rest_voltage @", "above", "and", "at_least", "at_most", "below", "is", "or", "then");
		expect("law \"x\" : when lamp @", "and", "is", "or", "then");
		begins("rule r { given battery.flat @", "and", "cleared", "confirmed", "or", "suspected", "not");
	}

	@Test
	void valuesOfTheVeryTestTraitOrState() {
		expect("law \"x\" : when lamp is @", "lit", "dark", "any", "not");
		expect("law \"x\" : when lamp is not @", "lit", "dark", "any");
		expect("rule a {\n  run lamp\n  on @\n}", "lit", "dark");
		expect("rule a {\n  in ignition @\n}", "off", "on", "cranking");
		expect("rule a {\n  for tarn where engine is @\n}", "diesel", "petrol", "electric", "any", "not");
		expect("repair r { verify { repeat lamp expect @ } }", "lit", "dark", "no_crank", "low_supply");
		begins("job \"j\" {\n  found lamp @\n}", "is", "lit", "dark");
	}

	@Test
	void unitsFitTheTest() {
		begins("rule a {\n  run rest_voltage\n  expect below 12 @\n}", "V", "mV", "uV", "kV");
		begins("rule a {\n  run rest_voltage\n  expect below 12 m@\n}", "mV", "met");
		begins("test t { takes 5 @", "min", "h", "s");
		begins("rule a {\n  given rest_voltage below @\n}", "0 V");
		assertFalse(labels("rule a {\n  run rest_voltage\n  expect below 12 @\n}").contains("Ohm"));
	}

	@Test
	void outcomesFitWhatWasExpected() {
		begins("rule a {\n  run rest_voltage\n  expect 12 V .. 13 V\n  @\n}", "for", "given", "in", "above", "below", "met",
				"otherwise");
		assertFalse(labels("rule a {\n  run rest_voltage\n  expect 12 V .. 13 V\n  @\n}").contains("then"));
		assertEquals("rule a {\n  run lamp\n  on lit  : proves nothing\n  on dark : proves nothing@\n}",
				chosen("rule a {\n  run lamp\n  o@\n}", "on each result"));
	}

	@Test
	void whatAnInstrumentShowsBeyondItsRangeIsOneValueAmongNumbers() {
		String test = "test ohms {\n  measures Ohm 0 .. 200 step 1 over open_line \"open line\"\n}\n";
		assertEquals(test + "rule a {\n  given ohms is open_line@\n}", chosen(test + "rule a {\n  given ohms is o@\n}", "open_line"));
		assertTrue(labels(test + "rule a {\n  given ohms @\n}").containsAll(List.of("above", "is")));
		assertTrue(labels(test + "rule a {\n  run ohms\n  on @\n}").containsAll(List.of("open_line", "above")));
		assertFalse(labels(test + "rule a {\n  run ohms\n  @\n}").contains("on each result"), "numbers cannot be listed");
		assertTrue(labels("test ohms {\n  measures Ohm 0 .. 200 step 1 @\n}").containsAll(List.of("over", "under")));
		assertFalse(labels("test ohms {\n  measures Ohm 0 .. 200 step 1 over ol @\n}").contains("over"));
	}

	@Test
	void picturesOfTheProjectAreProposed(@TempDir Path folder) throws IOException {
		Files.createDirectories(folder.resolve("pictures"));
		for (String file : List.of("pictures/b.png", "a.JPG", "notes.txt", "pictures/c.svg")) {
			Files.writeString(folder.resolve(file), "");
		}
		String text = "test t {\n  results a, b\n  picture \n}\n";
		Files.writeString(folder.resolve("a.bay"), text);
		EditorServices services = new EditorServices(RuleProject.open(folder), Cursor.CLOCK);
		List<Proposal> found = services.complete("a.bay", text.indexOf("picture ") + 8);
		assertEquals(List.of("\"a.JPG\"", "\"pictures/b.png\""), found.stream().map(Proposal::label).toList());
		assertEquals("\"a.JPG\" \"what it shows\"", found.get(0).text());
	}

	@Test
	void provenanceIsFilledIn() {
		String rule = "rule a {\n  because \"x\"\n  by \"M. Sund\" on 2026-01-01\n}\n";
		assertEquals(rule + "rule b {\n  by \"M. Sund\" on 2026-04-01@\n}", chosen(rule + "rule b {\n  b@\n}", "by"));
		assertEquals(rule + "rule b {\n  by \"M. Sund\" on 2026-04-01@\n}",
				chosen(rule + "rule b {\n  by @\n}", "\"M. Sund\" on 2026-04-01"));
		assertEquals("rule b {\n  by \"M\" on 2026-04-01@\n}", chosen("rule b {\n  by \"M\" on @\n}", "2026-04-01"));
	}

	@Test
	void nothingInTextsAndComments() {
		expect("rule a {\n  because \"gi@ven\"\n}");
		expect("rule a {\n  because \"gi@\n}");
		expect("// ru@");
		expect("/* ru@");
		expect("/* ru@ */");
		expect("rule a { run rest_voltage expect 12@ }");
		assertTrue(labels("rule a {\n  because \"x\"@\n}").size() > 2);
	}

	@Test
	void whatIsWrongFurtherUpHidesNothing() {
		expect("rule broken {\n  given given ,, \n  run\n\nrule a {\n  run @", "lamp", "rest_voltage");
		expect("} } ] sign ;\ntest x { measures }}\nrule a {\n  then confirms battery.f@", "battery.flat");
		expect("rule a {\n  for \n  given no_crank,\n  run lamp\n  on lit clears\n  on dark : confirms @\n}", "battery.flat",
				"battery.open_cell");
		expect("rule a {\n  given no_crank no_crank nonsense\n  run rest_voltage\n  met clears x.y\n  because\n  source @\n}",
				"jobs", "memory", "practice", "published");
		expect("sign \"no name\"\nlaw \"x\" when lamp is @", "lit", "dark", "any", "not");
	}

	@Test
	void whatStandsAtTheEndOfAnElementCanGoOnOrBegin() {
		assertTrue(labels("sign a \"A\" @").contains("intermittent"));
		assertTrue(labels("sign a \"A\"\n@").contains("rule"));
		assertFalse(labels("rule a {\n @").contains("family"));
	}

	@Test
	void wordsOfTheLanguageAreEscapedWhereTheyAreNames() {
		Cursor cursor = Cursor.in("sign ^given \"Given\"\nrule a {\n  given @\n}");
		Proposal given = cursor.services().complete(Cursor.FILE, cursor.offset()).stream()
				.filter(found -> found.label().equals("given") && found.kind() == Proposal.Kind.SIGN).findFirst().orElseThrow();
		assertEquals("^given", given.text());
	}

	@Test
	void skeletonsHaveSlotsInTheirText() {
		for (Skeleton skeleton : Cursor.in("@").services().templates()) {
			assertFalse(skeleton.text().contains("<"), skeleton.text());
			int behind = 0;
			for (Slot slot : skeleton.slots()) {
				assertTrue(slot.offset() >= behind && slot.offset() + slot.length() <= skeleton.text().length());
				behind = slot.offset() + slot.length();
			}
		}
	}

	@Test
	void aDeclaredNameIsExplained() {
		Proposal lamp = at("rule a {\n  run la@\n}").get(0);
		assertEquals("test · Charge lamp", lamp.detail());
		assertEquals("Defined in names.bay.", lamp.documentation());
		assertEquals(Proposal.Kind.TEST, lamp.kind());
	}

	@Test
	void aWorkshopSaysWhatItTakes() {
		expect("wor@", "workshop");
		expect("workshop {\n  hour 3\n  @\n}", "scan", "lacks", "skill");
		expect("workshop { scan @ }", "all", "each");
		begins("workshop { scan each @ }", "cost", "needs", "takes");
		begins("workshop { scan each takes 4 @ }", "cost", "needs", "min", "h", "s");
		expect("workshop { scan each needs @ }", "multimeter");
		expect("workshop { lacks @ }", "multimeter");
		expect("workshop { skill @ }", "basic", "licensed", "trained");
		expect("state net : awake, asleep @", "takes");
		expect("state net : asleep takes 20 @", "min", "h", "s");
		assertEquals("workshop {\n  lacks multimeter@\n}", chosen("workshop {\n  lacks m@\n}", "multimeter"));
	}
}
