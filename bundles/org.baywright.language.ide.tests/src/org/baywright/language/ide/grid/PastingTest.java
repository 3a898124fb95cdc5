package org.baywright.language.ide.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Conclusion;
import org.baywright.model.Rule;
import org.baywright.model.words.Words;
import org.junit.jupiter.api.Test;

/** What is pasted from a spreadsheet is written, and what is not understood is told with its row and column. */
class PastingTest {

	private static final String TEXT = """
			family osier "Osier van"
			sign no_crank "No crank"
			part battery "Battery" { fault flat "Flat" fault worn "Worn" fault post "Post" }
			test volts "Voltage" { measures V 0 .. 18 step 0.1 takes 8 min }
			test load "Load" { results pass "Passes", marginal, fail takes 9 min }
			test lamp "Lamp" { results lit, dark takes 1 min }
			rule volts_rule "Volts" {
			  given no_crank run volts
			  on below 12 V     : confirms battery.flat
			  on 12 V .. 12.3 V : suspects battery.worn
			  on above 12.3 V   : clears battery.flat
			  because "a" source memory by "R. Falk" on 2026-03-02
			}
			rule load_rule "Loaded" {
			  given no_crank run load
			  on pass : clears battery.worn
			  otherwise : confirms battery.worn
			  because "a" source memory by "R. Falk" on 2026-03-02
			}
			""";

	private static Snapshot read(String text) {
		return Samples.inMemory(new TreeMap<>(Map.of("rules.bay", text))).snapshot();
	}

	private static List<Pasting.Head> tests(Snapshot snapshot) {
		return Stream.concat(Stream.of(new Pasting.Head("", "Signs and codes alone")),
				snapshot.rules().tests().stream().map(test -> new Pasting.Head(test.name(), test.title()))).toList();
	}

	private static List<Pasting.Head> faults(Snapshot snapshot) {
		Words words = new Words(snapshot.rules());
		return snapshot.rules().faults().stream().map(fault -> new Pasting.Head(fault.name(), words.fault(fault.name()))).toList();
	}

	/** What the grid shows in a cell; see the presenter's {@code Cell}. */
	private static String cell(Snapshot snapshot, String test, String fault) {
		Words words = new Words(snapshot.rules());
		return snapshot.rules().rules().stream().sorted(java.util.Comparator.comparing(Rule::name)).filter(rule -> rule.test().orElse("").equals(test))
				.flatMap(rule -> rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream()
						.filter(said -> said instanceof Conclusion.OnFault on && on.fault().equals(fault))
						.map(said -> (words.result(rule, outcome) + " " + ((Conclusion.OnFault) said).verdict().verb()).strip())))
				.distinct().collect(Collectors.joining("\n"));
	}

	private static Pasted paste(Snapshot snapshot, String text, int row, int column) {
		List<Pasting.Head> tests = tests(snapshot);
		List<Pasting.Head> faults = faults(snapshot);
		return new Pasting(snapshot, snapshot.rules().rules(), tests, faults, (line, field) -> cell(snapshot, tests.get(line).name(), faults.get(field).name()))
				.read(text, row, column);
	}

	private static Snapshot after(Pasted pasted) {
		List<NewRule> rules = pasted.rules(List.of(), "no_crank", "So it is.", "R. Falk", LocalDate.of(2026, 3, 2));
		assertEquals(java.util.Optional.empty(), Pasted.problem(rules));
		SortedMap<String, String> texts = GridChange.apply(pasted.edit(rules), pasted.snapshot().sources());
		Snapshot now = Samples.inMemory(texts).snapshot();
		assertEquals(List.of(), now.problems());
		return now;
	}

	@Test
	void cellsAreFoundByTitleAndByName() {
		Pasted pasted = paste(read(TEXT), "Test\tMinutes\tBattery: Flat\tbattery.worn\nVoltage\t8\tbelow 12.0 V confirms; above 12.3 V clears\tbelow 11 V confirms\n"
				+ "load\t9\tfail suspects\t\n", 0, 0);
		assertEquals(List.of(), pasted.troubles());
		assertEquals(List.of("Voltage – Battery: Worn: “12.0 V to 12.3 V suspects” → “below 11 V confirms”", "Load – Battery: Flat: nothing → “fail suspects”",
				"Load – Battery: Worn: “Passes clears; marginal or fail confirms” → nothing"), pasted.changes());
		Snapshot now = after(pasted);
		assertEquals("below 11.0 V confirms", cell(now, "volts", "battery.worn"));
		assertEquals("below 11.0 V confirms\n11.0 V to 11.9 V confirms\nabove 12.3 V clears", cell(now, "volts", "battery.flat"));
		assertEquals("fail suspects", cell(now, "load", "battery.flat"));
		assertEquals("", cell(now, "load", "battery.worn"));
	}

	@Test
	void withoutHeadersCellsGoFromTheChosenOneOn() {
		Pasted pasted = paste(read(TEXT), "below 12.4 V confirms; above clears\n\"pass clears\nfail confirms\"\n", 1, 2);
		assertEquals(List.of(), pasted.troubles());
		Snapshot now = after(pasted);
		assertEquals("below 12.0 V confirms\n12.0 V to 12.3 V confirms\nabove 12.3 V clears", cell(now, "volts", "battery.post"));
		assertEquals("Passes clears\nfail confirms", cell(now, "load", "battery.post"));
		assertEquals("below 12.0 V confirms\nabove 12.3 V clears", cell(now, "volts", "battery.flat"));
		// what the rest led to is told apart now
		assertEquals("Passes clears\nfail confirms\nmarginal confirms", cell(now, "load", "battery.worn"));
	}

	@Test
	void aTestThatNoRuleRunsGetsOne() {
		Pasted pasted = paste(read(TEXT), "\tbattery.flat\tbattery.post\nLamp\tdark confirms\tlit clears; dark suspects\n", 0, 0);
		assertEquals(List.of(), pasted.troubles());
		assertEquals(List.of("lamp"), List.copyOf(pasted.added().keySet()));
		Snapshot now = after(pasted);
		assertEquals("dark confirms", cell(now, "lamp", "battery.flat"));
		assertEquals("lit clears\ndark suspects", cell(now, "lamp", "battery.post"));
		assertEquals("Lamp", now.rules().rule("lamp_2").or(() -> now.rules().rule("lamp")).orElseThrow().title());
	}

	@Test
	void whatIsNotUnderstoodIsToldWithItsPlace() {
		Pasted pasted = paste(read(TEXT), "Test\tBattery: Flat\tBattery: Lost\nVoltage\t??\t\nNobody\tdark confirms\nLoad\tbroken confirms\nLamp\tconfirms\n"
				+ "Signs and codes alone\tconfirms\n", 0, 0);
		assertEquals(List.of(), pasted.changes());
		assertEquals(6, pasted.troubles().size(), pasted.troubles().toString());
		assertTrue(pasted.troubles().get(0).startsWith("Row 1, column 3: the grid has no single fault “Battery: Lost”."), pasted.troubles().get(0));
		assertTrue(pasted.troubles().get(1).startsWith("Row 2, column 2: “??” is not understood."), pasted.troubles().get(1));
		assertTrue(pasted.troubles().get(2).startsWith("Row 3, column 1: the grid has no single test “Nobody”."), pasted.troubles().get(2));
		assertEquals("Row 4, column 2: “broken” is no result of the test. It has Passes, marginal, fail.", pasted.troubles().get(3));
		assertTrue(pasted.troubles().get(4).startsWith("Row 5, column 2: say with which result:"), pasted.troubles().get(4));
		assertTrue(pasted.troubles().get(5).startsWith("Row 6, column 2: it does not tell the sign"), pasted.troubles().get(5));
		assertTrue(pasted.edit(List.of()).isEmpty());
		assertEquals(List.of("Row 1, column 1: “above 40 V” holds no value: the test measures 0.0 V to 18.0 V.",
				"Row 1, column 2: “below 3 Ohm” is in ohm, and the test measures in V."), paste(read(TEXT), "above 40 V confirms\tbelow 3 Ohm clears", 1, 0).troubles());
	}

	@Test
	void ofSeveralRulesEachKeepsWhatTheCellStillSays() {
		String second = """
				rule warm "Warm" {
				  given no_crank run volts expect below 12 V
				  met : proves nothing
				  above : suspects battery.flat
				  because "a" source memory by "R. Falk" on 2026-03-02
				}
				""";
		Snapshot snapshot = read(TEXT + second);
		assertEquals("below 12.0 V confirms\nabove 12.3 V clears\n12.0 V or more suspects", cell(snapshot, "volts", "battery.flat"));
		Pasted pasted = paste(snapshot, "above 12.3 V clears; below 12.0 V suspects", 1, 0);
		assertEquals(List.of(), pasted.troubles());
		assertEquals("below 12.0 V suspects\nabove 12.3 V clears", cell(after(pasted), "volts", "battery.flat"));
		pasted = paste(snapshot, "below 5 V confirms", 1, 0);
		assertEquals(List.of("Row 1, column 1: several rules run this test, and none of them tells “below 5 V” apart. Edit this cell by itself (F2) and "
				+ "choose the rule."), pasted.troubles());
		// none of them speaks of it, and who pastes does not say which one is to
		assertTrue(paste(snapshot, "below 5 V confirms", 1, 2).troubles().get(0).contains("several rules run this test. Edit this cell"));
		assertEquals(List.of(), paste(snapshot, "nothing", 1, 2).changes());
	}

	@Test
	void whatLiesOutsideOfTheGridIsTold() {
		Pasted pasted = paste(read(TEXT), "lit clears\tlit clears", 3, 2);
		assertEquals(1, pasted.changes().size());
		assertTrue(pasted.troubles().get(0).startsWith("Row 1, column 2: it lies outside of the grid."), pasted.troubles().get(0));
	}

	@Test
	void whatIsCopiedAndPastedChangesNothing() {
		for (String name : List.of("electric-van", "farm-tractor", "light-van")) {
			Snapshot snapshot = Samples.inMemory(Samples.texts(Samples.project(name))).snapshot();
			String copied = "Test\t" + faults(snapshot).stream().map(Pasting.Head::title).collect(Collectors.joining("\t")) + "\n"
					+ tests(snapshot).stream().map(test -> test.title() + "\t" + faults(snapshot).stream()
							.map(fault -> cell(snapshot, test.name(), fault.name()).replace("\n", "; ")).collect(Collectors.joining("\t"))).collect(Collectors.joining("\n"));
			Pasted pasted = paste(snapshot, copied, 0, 0);
			assertEquals(List.of(), pasted.changes());
			assertEquals(List.of(), pasted.troubles());
			assertTrue(pasted.edit(List.of()).isEmpty());
		}
	}
}
