package org.baywright.language.ide.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.workspace.Snapshot;
import org.junit.jupiter.api.Test;

/** What the window of a cell asks and what comes of the answers. */
class CellFormTest {

	private static final String TEXT = """
			family osier "Osier van"
			sign no_crank "No crank"
			part battery "Battery" { fault flat "Flat" fault worn "Worn" }
			test volts "Voltage" { measures V 0 .. 18 step 0.1 takes 8 min }
			rule low "Low" {
			  given no_crank run volts expect at_least 12 V
			  met : proves nothing
			  below : suspects battery.worn
			  because "a" source memory by "R. Falk" on 2026-03-02
			}
			rule volts_rule "Volts" {
			  given no_crank run volts
			  on below 12 V : confirms battery.flat
			  because "a" source memory by "R. Falk" on 2026-03-02
			}
			""";

	private static final Snapshot SNAPSHOT = Samples.inMemory(new TreeMap<>(Map.of("rules.bay", TEXT))).snapshot();

	private static CellForm form(String test, String fault) {
		return new CellForm(SNAPSHOT, SNAPSHOT.rules().rules(), Optional.of("osier"), test, fault, "", LocalDate.of(2026, 3, 2));
	}

	@Test
	void theRuleThatSpeaksOfTheFaultComesFirst() {
		CellForm form = form("volts", "battery.flat");
		assertEquals("What “Voltage” proves of “Battery: Flat”", form.title());
		assertEquals(List.of("Volts", "Low", "A new rule"), form.rules());
		assertEquals(0, form.rule());
		assertEquals(List.of("below 12.0 V", "12.0 V or more"), List.of(form.table().title(0), form.table().title(1)));
		assertEquals("confirms", CellForm.VERDICTS.get(form.choice(0)));
		assertEquals("nothing", CellForm.VERDICTS.get(form.choice(1)));
		assertTrue(form.asked().get().isEmpty());
		form.choose(1, CellForm.VERDICTS.indexOf("clears"));
		assertEquals("rules.bay, line 14:\n+   on at_least 12 V : clears battery.flat\n", form.asked().get().preview());
		form.choose(1, 0);
		assertTrue(form.asked().get().preview().isEmpty(), form.asked().get().preview());
	}

	@Test
	void limitsAreNumbersWithinTheRange() {
		CellForm form = form("volts", "battery.flat");
		assertEquals(Optional.of("A limit is a number such as 12.4."), form.limit("low"));
		assertTrue(form.limit("40").orElseThrow().startsWith("The test measures 0.0 V to 18.0 V;"));
		assertEquals(Optional.of("There is a limit at 12.0 V already."), form.limit("12"));
		assertEquals(Optional.empty(), form.limit("11,5 V"));
		assertEquals(3, form.table().size());
	}

	@Test
	void aNewRuleAsksForWhatItNeeds() {
		CellForm form = form("volts", "battery.flat");
		form.rule(2);
		assertTrue(form.isNew());
		// it tells apart what the other rules do
		assertEquals(2, form.table().size());
		assertEquals("rules.bay", form.draft().file());
		assertEquals(List.of("osier"), form.draft().families());
		assertEquals(Optional.of("Say in a few words what the rule is about."), form.problem());
		form.draft("Volts again", List.of(), "", "", "", "rules.bay");
		assertEquals(Optional.of("Say what at least one result proves."), form.problem());
		form.choose(0, 1);
		assertEquals(Optional.of("Say why: others have to trust the rule."), form.problem());
		form.draft("Volts again", List.of(), "", "Why", "", "rules.bay");
		assertEquals(Optional.of("Say who writes the rule."), form.problem());
		form.draft("Volts again", List.of(), "", "Why", "R. Falk", "rules");
		assertEquals(Optional.of("Say in which file the rule is written, such as rules.bay."), form.problem());
		form.draft("Volts again", List.of(), "", "Why", "R. Falk", "rules.bay");
		assertEquals(Optional.empty(), form.problem());
		assertTrue(form.asked().get().preview().contains("+ rule volts_again \"Volts again\" {\n+   run volts\n+   on below 12 V : suspects battery.flat\n"),
				form.asked().get().preview());
	}

	@Test
	void aRuleWithoutTestNeedsASign() {
		CellForm form = form("", "battery.flat");
		assertTrue(form.isNew());
		assertEquals(1, form.table().size());
		assertEquals("", form.table().title(0));
		form.choose(0, 1);
		form.draft("Guess", List.of(), "", "Why", "R. Falk", "rules.bay");
		assertEquals(Optional.of("Choose the sign that the rule is given: it runs no test."), form.problem());
		form.draft("Guess", List.of(), "no_crank", "Why", "R. Falk", "rules.bay");
		assertTrue(form.asked().get().preview().contains("+   given no_crank\n+   then suspects battery.flat\n"), form.asked().get().preview());
	}

	@Test
	void deleteTakesTheFaultOutOfEveryRuleOfTheTest() {
		assertEquals("rules.bay, line 13:\n-   on below 12 V : confirms battery.flat\n+   on below 12 V : proves nothing\n",
				form("volts", "battery.flat").emptied().get().preview());
		assertFalse(form("volts", "battery.worn").emptied().get().isEmpty());
	}
}
