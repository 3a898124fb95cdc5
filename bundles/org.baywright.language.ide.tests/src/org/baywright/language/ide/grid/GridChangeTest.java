package org.baywright.language.ide.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Meaning;
import org.baywright.model.Rule;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.api.Test;

/** What is chosen for a cell is written with the fewest changes, and nothing else is touched. */
class GridChangeTest {

	private static final String FILE = "rules.bay";
	private static final Optional<VerdictKind> CONFIRMS = Optional.of(VerdictKind.CONFIRMED);
	private static final Optional<VerdictKind> SUSPECTS = Optional.of(VerdictKind.SUSPECTED);
	private static final Optional<VerdictKind> CLEARS = Optional.of(VerdictKind.CLEARED);
	private static final Optional<VerdictKind> NOTHING = Optional.empty();

	private static final List<Optional<VerdictKind>> VERDICTS = List.of(CONFIRMS, SUSPECTS, CLEARS, NOTHING);

	private static final String BASE = """
			family osier "Osier van"
			sign no_crank "No crank"
			part battery "Battery" { fault flat "Flat" fault worn "Worn" fault post "Post" }
			test volts "Voltage" { measures V 0 .. 18 step 0.1 takes 8 min }
			test load "Load" { results pass, marginal, fail takes 9 min }
			test lamp "Lamp" { results lit, dark takes 1 min }
			test line "Line" { measures Ohm 0 .. 200 step 1 over open_line "open line" takes 1 min }
			""";
	private static final String END = "  because \"a\"\n  source memory\n  by \"R. Falk\" on 2026-03-02\n}\n";

	private static Snapshot read(SortedMap<String, String> texts) {
		return Samples.inMemory(texts).snapshot();
	}

	private static Snapshot read(String text) {
		return read(new TreeMap<>(java.util.Map.of(FILE, text)));
	}

	/** Changes the rule {@code r}, whose text begins behind its name, and checks its text and that what was chosen is there. */
	private static void assertChange(String after, String before, UnaryOperator<RuleTable> how) {
		Snapshot snapshot = read(BASE + "rule r {\n" + before + END);
		assertEquals(List.of(), snapshot.problems());
		GridChange change = new GridChange(snapshot);
		RuleTable wanted = how.apply(change.table(snapshot.rules().rule("r").orElseThrow()));
		GridEdit edit = change.set(wanted).done();
		SortedMap<String, String> now = GridChange.apply(edit, snapshot.sources());
		assertEquals(BASE + "rule r {\n" + after + END, now.get(FILE));
		Snapshot read = read(now);
		assertEquals(List.of(), read.problems());
		RuleTable found = new GridChange(read).table(read.rules().rule("r").orElseThrow());
		assertEquals(said(wanted), said(found));
	}

	private static String said(RuleTable table) {
		StringBuilder out = new StringBuilder();
		for (int i = 0; i < table.size(); i++) {
			for (String fault : List.of("battery.flat", "battery.worn", "battery.post")) {
				out.append(table.lines().get(i).values()).append(' ').append(fault).append(' ').append(table.verdict(i, fault)).append('\n');
			}
		}
		return out.toString();
	}

	@Test
	void aFaultIsAddedToAConclusionMovedAndTakenOut() {
		String before = """
				  run volts
				  on below 12 V     : confirms battery.flat // empty
				  on 12 V .. 12.3 V : suspects battery.flat, battery.worn
				  on above 12.3 V   : clears battery.flat
				""";
		assertChange(before.replace("flat // empty", "flat, battery.worn // empty"), before, table -> table.with(0, "battery.worn", CONFIRMS));
		assertChange(before.replace("flat // empty", "flat  suspects battery.worn // empty"), before, table -> table.with(0, "battery.worn", SUSPECTS));
		assertChange(before.replace("suspects battery.flat, battery.worn", "suspects battery.flat"), before,
				table -> table.with(1, "battery.worn", NOTHING));
		assertChange(before.replace("suspects battery.flat, battery.worn", "suspects battery.worn  confirms battery.flat"), before,
				table -> table.with(1, "battery.flat", CONFIRMS));
		assertChange(before.replace("confirms battery.flat // empty", "clears battery.flat // empty"), before,
				table -> table.with(0, "battery.flat", CLEARS));
	}

	@Test
	void whatSaysNothingAnyMoreProvesNothing() {
		String before = "  run volts\n  expect at_least 12 V\n  met   : clears battery.flat // full\n  below : confirms battery.flat\n";
		assertChange(before.replace("clears battery.flat // full", "proves nothing // full"), before, table -> table.with(0, "battery.flat", NOTHING));
		assertChange("  run lamp\n  on lit : clears battery.flat\n  on dark : confirms battery.post\n",
				"  run lamp\n  on lit : clears battery.flat\n  on dark : proves nothing\n", table -> table.with(1, "battery.post", CONFIRMS));
		assertChange(before.replace("clears battery.flat // full", "proves nothing // full").replace("confirms battery.flat", "proves nothing"), before,
				table -> table.without("battery.flat"));
	}

	@Test
	void resultsOfWhichTheRuleSaysNothingGetTheirLine() {
		assertChange("  run load\n  on pass     : clears battery.worn\n  on marginal : suspects battery.worn\n  on fail     : confirms battery.worn\n",
				"  run load\n  on pass     : clears battery.worn\n  on fail     : confirms battery.worn\n", table -> table.with(1, "battery.worn", SUSPECTS));
		assertChange("  run volts\n  expect at_least 12 V\n  below : confirms battery.flat\n  met   : clears battery.flat\n",
				"  run volts\n  expect at_least 12 V\n  below : confirms battery.flat\n", table -> table.with(1, "battery.flat", CLEARS));
		assertChange("  run volts\n  expect 12 V .. 13 V\n  below : confirms battery.flat\n  met : clears battery.flat\n  above : confirms battery.post\n",
				"  run volts\n  expect 12 V .. 13 V\n  met : clears battery.flat\n",
				table -> table.with(0, "battery.flat", CONFIRMS).with(2, "battery.post", CONFIRMS));
	}

	@Test
	void aBandIsSplitAtALimit() {
		BigDecimal eleven = new BigDecimal("11");
		assertChange("  run volts\n  on below 11 V : confirms battery.flat\n  on 11 V .. 11.9 V : confirms battery.flat, battery.worn\n  on at_least 12 V : clears battery.flat\n",
				"  run volts\n  on below 12 V : confirms battery.flat\n  on at_least 12 V : clears battery.flat\n",
				table -> table.split(eleven).with(1, "battery.worn", CONFIRMS));
		assertChange("  run volts expect at_least 12 V\n  met   : clears battery.flat\n  on below 11 V : confirms battery.flat\n  on 11 V .. 11.9 V : suspects battery.flat\n",
				"  run volts expect at_least 12 V\n  met   : clears battery.flat\n  below : confirms battery.flat\n",
				table -> table.split(eleven).with(2, "battery.flat", SUSPECTS));
	}

	@Test
	void whatInstrumentsShowBeyondTheirRangeStaysWhereItIs() {
		assertChange("  run line\n  on below 100 Ohm : clears battery.post\n  on 100 Ohm .. 149 Ohm : suspects battery.post\n  on at_least 150 Ohm : suspects battery.post\n  on open_line : confirms battery.post\n"
				.replace("  on at_least 150 Ohm", "  on 150 Ohm .. 200 Ohm"),
				"  run line\n  on below 100 Ohm : clears battery.post\n  on 100 Ohm .. 200 Ohm : suspects battery.post\n  on open_line : confirms battery.post\n",
				table -> table.split(new BigDecimal("150")));
	}

	@Test
	void aLineOfItsOwnForEachNamedResult() {
		assertChange("  run load\n  on pass : clears battery.worn\n  on marginal : suspects battery.worn\n  otherwise : confirms battery.worn\n",
				"  run load\n  on pass : clears battery.worn\n  otherwise : confirms battery.worn\n", table -> table.apart().with(1, "battery.worn", SUSPECTS));
	}

	@Test
	void severalOutcomesInOneLineStayInOneLine() {
		assertChange("  run load on pass : clears battery.worn, battery.flat on fail : confirms battery.worn\n",
				"  run load on pass : clears battery.worn on fail : confirms battery.worn\n", table -> table.with(0, "battery.flat", CLEARS));
	}

	@Test
	void aNewRuleIsWrittenWithWhatEachResultProves() {
		Snapshot snapshot = read(BASE);
		RuleTable table = CellRules.of(snapshot, List.of(), "volts", "battery.flat").blank().split(new BigDecimal("12")).split(new BigDecimal("12.4"));
		table = table.with(0, "battery.flat", CONFIRMS).with(2, "battery.flat", CLEARS);
		NewRule rule = new NewRule("Charge first", List.of("osier"), "no_crank", "volts", table, "Volts tell.", "R. Falk", LocalDate.of(2026, 3, 2), "new.bay");
		assertEquals(Optional.empty(), rule.problem());
		GridEdit edit = new GridChange(snapshot).add(rule).done();
		SortedMap<String, String> now = GridChange.apply(edit, snapshot.sources());
		assertEquals("""
				rule charge_first "Charge first" {
				  for osier
				  given no_crank
				  run volts
				  on below 12 V      : confirms battery.flat
				  on at_least 12.4 V : clears battery.flat
				  otherwise          : proves nothing
				  because "Volts tell."
				  source practice
				  by "R. Falk" on 2026-03-02
				}
				""", now.get("new.bay"));
		assertEquals(List.of(), read(now).problems());
		assertTrue(edit.preview().startsWith("new.bay, line 1:\n+ rule charge_first"), edit.preview());
	}

	@Test
	void rulesOfChainsAreChangedInTheirChain() {
		Snapshot snapshot = read(BASE + "chain way \"The way\" { given no_crank point lamp expect lit : battery.post point load expect pass : battery.worn\n" + END);
		CellRules cell = CellRules.of(snapshot, snapshot.rules().rules(), "lamp", "battery.post");
		assertTrue(cell.rules().isEmpty());
		assertFalse(cell.locked().isEmpty());
		assertTrue(cell.locked().get(0).endsWith("follows from the chain “The way”. Change the chain: rules.bay, line 8."), cell.locked().get(0));
	}

	@Test
	void whatThisProjectBuildsOnIsChangedThere() {
		Snapshot snapshot = read(BASE + "rule r {\n  run lamp\n  on lit : clears battery.flat\n" + END);
		assertEquals(Optional.empty(), CellRules.locked(snapshot.rules(), snapshot.rules().rule("r").orElseThrow()));
		assertEquals(Optional.of("“r” belongs to a project that this one builds on. Change it there: ../trailer/rules.bay, line 8."),
				CellRules.locked(snapshot.rules(), in("../trailer/rules.bay", snapshot)));
		assertEquals(Optional.of("“r” comes from the rule pack trailer.baypack, which only those who made it can change."),
				CellRules.locked(snapshot.rules(), in("trailer.baypack", snapshot)));
		CellRules cell = CellRules.of(snapshot, List.of(in("trailer.baypack", snapshot)), "lamp", "battery.flat");
		assertTrue(cell.isLocked() && cell.rules().isEmpty());
	}

	private static Rule in(String file, Snapshot snapshot) {
		Rule rule = snapshot.rules().rule("r").orElseThrow();
		return new Rule(rule.name(), rule.title(), rule.scope(), rule.given(), rule.states(), rule.test(), rule.outcomes(), rule.provenance(),
				rule.testSpan(), new Span(file, 8, 1, 8, 2, 0, 1));
	}

	/** In all examples: whatever is chosen for a result is what is read back, and nothing else has changed. */
	@Test
	void everyCellOfTheExamplesReadsBackAsChosen() {
		int done = 0;
		for (String name : List.of("electric-van", "farm-tractor", "light-van")) {
			var folder = Samples.project(name);
			SortedMap<String, String> texts = Samples.texts(folder);
			var project = Samples.inMemory(texts);
			Snapshot snapshot = project.snapshot();
			List<String> faults = snapshot.rules().faults().stream().map(fault -> fault.name()).toList();
			int number = 0;
			for (Rule rule : snapshot.rules().rules()) {
				if (CellRules.locked(snapshot.rules(), rule).isPresent()) {
					continue;
				}
				RuleTable table = new GridChange(snapshot).table(rule);
				for (int line = 0; line < table.size(); line++) {
					// a fault that the rule speaks of, and one of all the others in turn
					String spoken = faults.stream().filter(table::speaksOf).findFirst().orElse(faults.get(0));
					for (Optional<VerdictKind> wanted : VERDICTS) {
						assertReadsBack(project, snapshot, rule, table.with(line, spoken, wanted));
						done++;
					}
					String other = faults.get(number % faults.size());
					assertReadsBack(project, snapshot, rule, table.with(line, other, VERDICTS.get(number++ % VERDICTS.size())));
					done++;
				}
			}
		}
		assertTrue(done > 800, "cells: " + done);
	}

	private static void assertReadsBack(org.baywright.language.workspace.RuleProject project, Snapshot snapshot, Rule rule, RuleTable wanted) {
		GridEdit edit = new GridChange(snapshot).set(wanted).done();
		String file = rule.span().file();
		String before = snapshot.sources().get(file);
		String after = GridChange.apply(edit, snapshot.sources()).get(file);
		project.update(file, after);
		Snapshot now = project.snapshot();
		project.update(file, before);
		String what = rule.name() + "\n" + edit.preview();
		assertEquals(snapshot.problems().size(), now.problems().size(), () -> what + now.problems());
		assertEquals(rules(snapshot, rule.name()), rules(now, rule.name()), what);
		RuleTable found = new GridChange(now).table(now.rules().rule(rule.name()).orElseThrow());
		assertEquals(all(wanted, snapshot), all(found, now), what);
	}

	private static List<String> rules(Snapshot snapshot, String but) {
		return snapshot.rules().rules().stream().filter(rule -> !rule.name().equals(but)).map(rule -> rule.name() + Meaning.text(rule)).toList();
	}

	private static List<String> all(RuleTable table, Snapshot snapshot) {
		List<String> out = new java.util.ArrayList<>();
		for (int i = 0; i < table.size(); i++) {
			for (var fault : snapshot.rules().faults()) {
				int line = i;
				table.verdict(i, fault.name()).ifPresent(verdict -> out.add(table.lines().get(line).values() + " " + verdict + " " + fault.name()));
			}
		}
		return out;
	}
}
