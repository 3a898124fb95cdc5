package org.baywright.language.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;

import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class ProjectMergeTest {

	private static final String BASE = """
			// Starting the van.

			family tarn "Tarn" { trait engine : diesel, petrol }
			sign no_crank "Does not crank" // the usual complaint
			part battery "Battery" { fault flat "Flat" seen 3 }

			// At rest, surface charge taken off.
			test rest "Voltage at rest" {
			  measures V 0 .. 18 step 0.1
			  takes 8 min
			}

			rule flat_battery "Battery too low" {
			  for tarn
			  given no_crank
			  run rest
			  on below 12.0 V : confirms battery.flat
			  on above 12.4 V : clears battery.flat
			  because "A quarter of the charge."
			  by "A. Author" on 2026-03-02
			}
			""";

	private static String merged(String base, String ours, String theirs) {
		Merged merged = ProjectMerge.of(Map.of("a.bay", base), Map.of("a.bay", ours), Map.of("a.bay", theirs));
		assertEquals(List.of(), merged.conflicts());
		return merged.texts().get("a.bay");
	}

	private static Conflict conflict(String base, String ours, String theirs) {
		Merged merged = ProjectMerge.of(Map.of("a.bay", base), Map.of("a.bay", ours), Map.of("a.bay", theirs));
		assertEquals(1, merged.conflicts().size(), merged.conflicts().toString());
		return merged.conflicts().get(0);
	}

	private static String edited(String text, String before, String after) {
		assertTrue(text.contains(before), before);
		return text.replace(before, after);
	}

	@Test
	void aFileIsItsPieces() {
		Pieces pieces = Pieces.of("a.bay", BASE).orElseThrow();
		assertEquals(List.of("comment at the beginning of a.bay", "family tarn", "sign no_crank", "part battery", "test rest", "rule flat_battery"),
				pieces.pieces().stream().map(piece -> piece.key().toString()).toList());
		assertEquals("sign no_crank \"Does not crank\" // the usual complaint", pieces.pieces().get(2).body());
		assertTrue(pieces.pieces().get(4).body().startsWith("// At rest"));
		StringBuilder text = new StringBuilder();
		pieces.pieces().forEach(piece -> text.append(piece.gap().text()).append(piece.body()));
		assertEquals(BASE, text + pieces.end());
	}

	@Test
	void elementsWithoutANameAreToldApart() {
		List<String> keys = Pieces.of("a.bay", """
				law "Flat": when rest below 9 V then no_crank
				review flat_battery by "B" on 2026-03-04 agrees "fine" meaning "1234abcd"
				accept "0a1b" because "known"
				exclusive battery.flat , battery.open
				builds_on "../base" meaning "x"
				workshop "Ours" { hour 60 }
				job "Job 1" { on tarn found no_crank was battery.flat }
				job "Job 1" { on tarn found no_crank was battery.flat }
				// the end
				""").orElseThrow().pieces().stream().map(piece -> piece.key().toString()).toList();
		assertEquals(List.of("law Flat", "review of flat_battery by B on 2026-03-04", "accept 0a1b", "exclusive battery.flat , battery.open",
				"builds_on ../base", "workshop", "job Job 1", "job Job 1 (2)", "comment at the end of a.bay"), keys);
	}

	@Test
	void whatOneSideChangedIsTakenOver() {
		String ours = edited(BASE, "takes 8 min", "takes 9 min");
		String theirs = edited(BASE, "below 12.0 V", "below 11.8 V");
		String both = edited(ours, "below 12.0 V", "below 11.8 V");
		assertEquals(both, merged(BASE, ours, theirs));
		assertEquals(both, merged(BASE, theirs, ours));
	}

	@Test
	void whatBothAppendIsKeptOursFirst() {
		String review = "review flat_battery by \"%s\" on 2026-03-04 agrees meaning \"1234abcd\"\n";
		assertEquals(BASE + review.formatted("B") + review.formatted("C"), merged(BASE, BASE + review.formatted("B"), BASE + review.formatted("C")));
	}

	@Test
	void whatBothPutFirstDoesNotRunTogether() {
		String text = "sign a\nsign b\n";
		assertEquals("sign ours\nsign theirs\nsign a\nsign b\n", merged(text, "sign ours\n" + text, "sign theirs\n" + text));
		assertEquals("sign b // x\nsign c\n", merged("sign a sign b sign c\n", "sign b sign c\n", "sign a sign b // x\nsign c\n"));
	}

	@Test
	void whatOneTookOutAndNobodyChangedGoes() {
		String ours = edited(BASE, "part battery \"Battery\" { fault flat \"Flat\" seen 3 }\n", "");
		assertEquals(edited(ours, "takes 8", "takes 9"), merged(BASE, ours, edited(BASE, "takes 8", "takes 9")));
		assertEquals(ours, merged(BASE, ours, edited(BASE, "{ fault flat", "{\n  fault flat")));
	}

	@Test
	void wordsBesideTheMeaningGoTogetherWithTheMeaning() {
		String ours = edited(edited(BASE, "\"Battery too low\"", "\"Battery too low to crank\""), "A quarter of the charge.", "About a quarter.");
		String theirs = edited(BASE, "on below 12.0 V : confirms", "on below 11.8 V : suspects");
		assertEquals(edited(ours, "on below 12.0 V : confirms", "on below 11.8 V : suspects"), merged(BASE, ours, theirs));
		assertEquals(edited(theirs, "for tarn", "for tarn // all"), merged(BASE, theirs, edited(BASE, "for tarn", "for tarn // all")));
	}

	@Test
	void layoutAloneGivesWay() {
		String laidOut = edited(BASE, "  given no_crank\n  run rest", "\tgiven   no_crank\n\n\trun rest");
		String theirs = edited(BASE, "given no_crank", "given no_crank not present");
		assertEquals(theirs, merged(BASE, laidOut, theirs));
		assertEquals(theirs, merged(BASE, theirs, laidOut));
	}

	@Test
	void twoMeaningsAreAConflictAndOursStays() {
		String ours = edited(BASE, "below 12.0 V", "below 11.8 V");
		String theirs = edited(BASE, "above 12.4 V", "above 12.6 V");
		Conflict conflict = conflict(BASE, ours, theirs);
		assertEquals("rule flat_battery", conflict.id());
		assertEquals("a.bay", conflict.file());
		assertEquals(List.of("you:", "  no longer says  on below 12.0 V : confirms battery.flat", "  says now  on below 11.8 V : confirms battery.flat",
				"Ann:", "  no longer says  on above 12.4 V : clears battery.flat", "  says now  on above 12.6 V : clears battery.flat"),
				conflict.told("you", "Ann"));
		Merged merged = ProjectMerge.of(Map.of("a.bay", BASE), Map.of("a.bay", ours), Map.of("a.bay", theirs));
		assertEquals(ours, merged.texts().get("a.bay"));
		assertEquals(1, merged.open().size());
		Merged chosen = merged.choose("rule flat_battery", Conflict.Choice.THEIRS);
		assertEquals(theirs, chosen.texts().get("a.bay"));
		assertEquals(List.of(), chosen.open());
		assertEquals(ours, merged.choose("rule flat_battery", Conflict.Choice.OURS).texts().get("a.bay"));
		assertEquals(edited(ours, BASE.substring(BASE.indexOf("rule flat")).replace("12.0", "11.8"), "rule flat_battery { given no_crank }\n"),
				merged.choose("rule flat_battery", Conflict.Choice.text("rule flat_battery { given no_crank }\n")).texts().get("a.bay"));
		Assertions.assertThrows(NoSuchElementException.class, () -> merged.choose("rule other", Conflict.Choice.OURS));
	}

	@Test
	void theSameReasonWrittenTwiceIsAConflict() {
		assertEquals("rule flat_battery", conflict(BASE, edited(BASE, "A quarter of the charge.", "Ours."), edited(BASE, "A quarter of the charge.", "Theirs.")).id());
	}

	@Test
	void takenOutHereAndChangedThereIsAConflict() {
		String without = BASE.substring(0, BASE.indexOf("rule flat"));
		String changed = edited(BASE, "below 12.0 V", "below 11.8 V");
		Conflict conflict = conflict(BASE, without, changed);
		assertEquals(List.of("you: taken out", "they:", "  no longer says  on below 12.0 V : confirms battery.flat",
				"  says now  on below 11.8 V : confirms battery.flat"), conflict.told("you", "they"));
		Merged merged = ProjectMerge.of(Map.of("a.bay", BASE), Map.of("a.bay", without), Map.of("a.bay", changed));
		assertEquals(without.stripTrailing(), merged.texts().get("a.bay").stripTrailing());
		assertEquals(changed.stripTrailing(), merged.choose(conflict.id(), Conflict.Choice.THEIRS).texts().get("a.bay").stripTrailing());
		merged = ProjectMerge.of(Map.of("a.bay", BASE), Map.of("a.bay", changed), Map.of("a.bay", without));
		assertEquals(changed.stripTrailing(), merged.texts().get("a.bay").stripTrailing());
		assertEquals(without.stripTrailing(), merged.choose(conflict.id(), Conflict.Choice.THEIRS).texts().get("a.bay").stripTrailing());
	}

	@Test
	void theSameAddedTwiceComesOnceAndAnotherIsAConflict() {
		String ours = BASE + "sign dim \"Lamps dim\"\n";
		assertEquals(ours, merged(BASE, ours, BASE + "\nsign dim   \"Lamps dim\"\n"));
		assertEquals("sign dim", conflict(BASE, ours, BASE + "sign dim intermittent\n").id());
	}

	@Test
	void whatOneMovedToAnotherFileAndTheOtherEditedEndsThereEdited() {
		int rule = BASE.indexOf("rule flat");
		Map<String, String> split = Map.of("a.bay", BASE.substring(0, rule).stripTrailing() + "\n", "rules.bay", BASE.substring(rule));
		String edited = edited(BASE, "below 12.0 V", "below 11.8 V") + "\nsign late\n";
		for (boolean here : new boolean[] { true, false }) {
			Map<String, String> ours = here ? split : Map.of("a.bay", edited);
			Merged merged = ProjectMerge.of(Map.of("a.bay", BASE), ours, here ? Map.of("a.bay", edited) : split);
			assertEquals(List.of(), merged.conflicts());
			assertEquals(edited(split.get("rules.bay"), "below 12.0 V", "below 11.8 V"), merged.texts().get("rules.bay"));
			assertEquals(split.get("a.bay") + "\nsign late\n", merged.texts().get("a.bay"));
		}
	}

	@Test
	void aFileWithAnotherNameTakesAlongWhatTheOtherAddsToIt() {
		String added = edited(BASE, "part battery", "sign dim\npart battery");
		Merged merged = ProjectMerge.of(Map.of("a.bay", BASE), Map.of("b.bay", BASE.replace("// Starting", "// Starting anew")), Map.of("a.bay", added));
		assertEquals(List.of(), merged.conflicts());
		assertEquals(Map.of("b.bay", added.replace("// Starting", "// Starting anew")), merged.texts());
	}

	@Test
	void aFileThatCannotBeReadIsAConflictAsAWholeUnlessOneSideLeftIt() {
		String broken = edited(BASE, "measures V", "measures {{ V");
		assertEquals(broken, merged(BASE, BASE, broken));
		assertEquals(broken, merged(BASE, broken, broken));
		Conflict conflict = conflict(BASE, broken, edited(BASE, "takes 8", "takes 9"));
		assertEquals("file a.bay", conflict.id());
		assertEquals(List.of("you: a file of 21 lines", "they: a file of 21 lines"), conflict.told("you", "they"));
		Merged merged = ProjectMerge.of(Map.of("a.bay", BASE), Map.of("a.bay", broken), Map.of("a.bay", BASE + "sign x\n"));
		assertEquals(broken, merged.texts().get("a.bay"));
		assertEquals(BASE + "sign x\n", merged.choose("file a.bay", Conflict.Choice.THEIRS).texts().get("a.bay"));
	}

	@Test
	void lineEndsOfOneSideAreKept() {
		String ours = edited(BASE, "takes 8", "takes 9").replace("\n", "\r\n");
		String theirs = edited(BASE, "below 12.0 V", "below 11.8 V");
		assertEquals(edited(edited(BASE, "takes 8", "takes 9"), "below 12.0 V", "below 11.8 V").replace("\n", "\r\n"), merged(BASE, ours, theirs));
		assertEquals("\uFEFF" + theirs, merged(BASE, "\uFEFF" + BASE, theirs));
	}

	@Test
	void theOrderOfOneSideAndWhatTheOtherAddedAreKept() {
		assertEquals("sign c\nsign a\nsign new\nsign b\n", merged("sign a\nsign b\nsign c\n", "sign a\nsign new\nsign b\nsign c\n", "sign c\nsign a\nsign b\n"));
		assertEquals("sign c\nsign a\nsign new\nsign b\n", merged("sign a\nsign b\nsign c\n", "sign c\nsign a\nsign b\n", "sign a\nsign new\nsign b\nsign c\n"));
	}
}
