package org.baywright.presenter.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;

import org.baywright.model.Conclusion;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.junit.jupiter.api.Test;

class GridTest {

	private static final ProjectState SMALL = Examples.text("family osier \"Osier van\"", "family other",
			"sign no_crank \"No crank\"", "sign hum", "tool meter cost 3",
			"part battery \"Battery\" { fault flat \"Flat\" seen 4 fault worn \"Worn\" }",
			"test volts \"Voltage\" { measures V 0 .. 18 step 0.1 needs meter takes 8 min }",
			"test load \"=Load\" { results pass, fail cost 2 takes 90 min skill trained }",
			"rule first \"First\" { given no_crank run volts on below 12 V : confirms battery.flat",
			"  on 12 V .. 12.9 V : suspects battery.worn on at_least 13 V : clears battery.flat",
			"  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }",
			"rule second \"Second\" { for osier given battery.worn suspected run load on fail : confirms battery.worn",
			"  on pass : clears battery.worn because \"a\" source memory by \"R. Falk\" on 2026-03-02 }",
			"rule quiet { for other given hum then suspects battery.flat",
			"  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }");

	private static String rows(Grid grid) {
		return grid.rows().stream().map(Row::title).collect(Collectors.joining(", "));
	}

	@Test
	void cellsSayWhichResultSaysWhat() {
		Grid grid = Grid.of(SMALL, RuleScope.family("osier"), Grid.Order.COST);
		assertEquals(List.of("Battery: Flat", "Battery: Worn"), grid.columns().stream().map(Column::title).toList());
		assertEquals(4, grid.columns().get(0).seen());
		assertEquals("=Load, Voltage", rows(grid));
		Row volts = grid.rows().get(1);
		assertEquals("below 12.0 V confirms\n13.0 V or more clears", volts.cells().get(0).text());
		assertEquals("12.0 V to 12.9 V suspects", volts.cells().get(1).text());
		assertEquals("12.0 V to 12.9 V suspects – First", volts.cells().get(1).tooltip());
		assertEquals("", grid.rows().get(0).cells().get(0).text());
		assertEquals("8 min, cost 3, basic", volts.effort());
		assertEquals("1.5 h, cost 2, trained", grid.rows().get(0).effort());
	}

	@Test
	void ordersAndScopes() {
		Grid grid = Grid.of(SMALL, RuleScope.family("osier"), Grid.Order.TIME);
		assertEquals("Voltage, =Load", rows(grid));
		assertEquals("=Load, Voltage", rows(grid.sorted(Grid.Order.TITLE)));
		Grid other = Grid.of(SMALL, RuleScope.family("other"), Grid.Order.COST);
		assertEquals("Signs and codes alone, Voltage", rows(other));
		assertEquals("suspects", other.rows().get(0).cells().get(0).text());
		Grid hum = Grid.of(SMALL, RuleScope.family("other").around(new RuleScope.Around.OneSign("hum")), Grid.Order.COST);
		assertEquals("Signs and codes alone", rows(hum));
		assertEquals(1, hum.columns().size());
	}

	@Test
	void tabsSeparateFieldsAndNothingLooksLikeAFormula() {
		String tsv = Grid.of(SMALL, RuleScope.family("osier"), Grid.Order.COST).tsv();
		List<String> lines = tsv.lines().toList();
		assertEquals("Test\tMinutes\tCost\tSkill\tBattery: Flat\tBattery: Worn", lines.get(0));
		assertEquals("'=Load\t90\t2\ttrained\t\tfail confirms; pass clears", lines.get(1));
		assertEquals("Voltage\t8\t3\tbasic\tbelow 12.0 V confirms; 13.0 V or more clears\t12.0 V to 12.9 V suspects",
				lines.get(2));
		assertEquals(3, lines.size());
	}

	@Test
	void tellsFaultsThatNoTestSplits() {
		ProjectState flawed = Examples.checked("flawed/unsplit-faults.bay");
		Grid grid = Grid.of(flawed, RuleScope.family("plover"), Grid.Order.COST);
		assertEquals(List.of(List.of("pump.seized", "relay.burnt")), grid.groups());
		assertTrue(grid.columns().stream().allMatch(column -> column.group() == 0));
		assertEquals("1 test and 2 faults. 2 faults that no test can tell apart: Hydraulic pump: Pump seized and "
				+ "Relay of the pump: Contacts burnt.", grid.summary());
		Grid unchecked = Grid.of(ProjectState.unchecked(flawed.rules(), List.of(), List.of()),
				RuleScope.family("plover"), Grid.Order.COST);
		assertTrue(unchecked.summary().endsWith("has not been checked yet."), unchecked.summary());
		assertTrue(unchecked.columns().stream().allMatch(column -> column.group() == -1));
	}

	@Test
	void nothingToShowIsSaid() {
		Grid grid = Grid.of(SMALL, RuleScope.family("nowhere"), Grid.Order.COST);
		assertEquals("No rule here says anything about a fault.", grid.summary());
		assertFalse(grid.tsv().isEmpty());
	}

	@Test
	void everyConclusionOfTheExamplesStandsInItsCell() {
		for (String name : Examples.ALL) {
			ProjectState state = Examples.checked(name);
			RuleBase base = state.rules();
			for (Family family : base.vehicleFamilies()) {
				Grid grid = Grid.of(state, RuleScope.family(family.name()), Grid.Order.COST);
				long said = RuleScope.family(family.name()).rules(base).stream().flatMap(rule -> rule.outcomes().stream())
						.flatMap(outcome -> outcome.conclusions().stream()).filter(Conclusion.OnFault.class::isInstance).count();
				assertEquals(said, grid.rows().stream().flatMap(row -> row.cells().stream())
						.mapToInt(cell -> cell.marks().size()).sum());
				grid.rows().forEach(row -> assertEquals(grid.columns().size(), row.cells().size()));
				assertEquals(grid.rows().size() + 1, grid.tsv().lines().count());
			}
		}
	}

	@Test
	void whatNoRuleUsesComesLast() {
		Grid grid = Grid.of(SMALL, RuleScope.family("other"), Grid.Order.TITLE, true);
		assertEquals("Signs and codes alone, Voltage, =Load", rows(grid));
		assertEquals(List.of(true, true, false), grid.rows().stream().map(Row::used).toList());
		assertEquals(List.of(true, true), grid.columns().stream().map(Column::used).toList());
		assertTrue(grid.summary().startsWith("1 test and 2 faults. "), grid.summary());
		Grid nothing = Grid.of(SMALL, RuleScope.family("other").around(new RuleScope.Around.OneRule("none")), Grid.Order.TITLE, true);
		assertEquals(2, nothing.columns().size());
		assertEquals("Signs and codes alone, =Load, Voltage", rows(nothing));
		assertTrue(nothing.rows().stream().noneMatch(Row::used) && nothing.columns().stream().noneMatch(Column::used));
		assertEquals("No rule here says anything about a fault.", nothing.summary());
	}

	@Test
	void whatIsSeenWithATestSaysSoInPlaceOfItsEffort() {
		String why = " because \"a\" source memory by \"R. Falk\" on 2026-03-02 }";
		Grid grid = Grid.of(Examples.text("family van", "sign dead", "part wire { fault broken fault loose }",
				"test volts \"Voltage\" { measures V 0 .. 18 step 0.1 takes 8 min cost 3 }", "test course \"Course\" { seen_with volts results steady, jumps }",
				"test look \"Look\" { results good, bad takes 9 min cost 3 }",
				"rule a { given dead run volts on below 12 V : confirms wire.broken on at_least 12 V : clears wire.broken" + why,
				"rule b { given dead run course on jumps : confirms wire.loose on steady : clears wire.loose" + why,
				"rule c { given dead run look on bad : confirms wire.loose on good : clears wire.loose" + why), RuleScope.family("van"), Grid.Order.COST);
		assertEquals(List.of("Course: seen with Voltage", "Voltage: 8 min, cost 3, basic", "Look: 9 min, cost 3, basic"),
				grid.rows().stream().map(row -> row.title() + ": " + row.effort()).toList());
		assertEquals(List.of("Course\t0\t0\tseen with Voltage", "Voltage\t8\t3\tbasic", "Look\t9\t3\tbasic"),
				grid.tsv().lines().skip(1).map(line -> line.substring(0, line.lastIndexOf('\t', line.lastIndexOf('\t') - 1))).toList());
	}
}
