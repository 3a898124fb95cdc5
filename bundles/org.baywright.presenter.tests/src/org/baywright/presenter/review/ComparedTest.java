package org.baywright.presenter.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.Listener;
import org.baywright.analysis.difference.Comparison;
import org.baywright.analysis.difference.Difference;
import org.baywright.analysis.difference.Edit;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.junit.jupiter.api.Test;

/** What a change of the rules does to vehicles, from texts. Its vehicles and parts are invented. */
class ComparedTest {

	private static final String RULES = """
			family lark "Lark L2 (invented)" {
			  trait engine : petrol, diesel
			}
			family wren "Wren W1 (invented)" {
			  trait engine : petrol
			}
			sign dark "Charge lamp stays dark"
			sign slow "Cranks slowly"
			part alternator "Alternator" {
			  fault diode "Diode open"
			  fault brush "Brush worn"
			}
			part battery "Battery" {
			  fault flat "Low state of charge"
			}
			test rest "Voltage at rest" {
			  measures V 0 .. 16 step 0.1
			  takes 8 min
			}
			rule charge "Charge lamp and voltage" {
			  given dark
			  run rest
			  expect at_least 12.4 V
			  met : confirms alternator.diode
			  below : suspects battery.flat
			  because "Measured on nine jobs."
			  source practice
			  by "P. Author" on 2026-02-02
			}
			rule rest_of_it "Nothing explains it" {
			  given dark unexplained
			  then refers "an alternator bench"
			  because "Nothing more can be done here."
			  source practice
			  by "P. Author" on 2026-02-02
			}
			job "Job 1" {
			  on lark with engine petrol
			  found dark, rest 12.5 V
			  was alternator.diode
			}
			""";

	private static RuleBase read(Map<String, String> files) {
		RuleProject project = RuleProject.inMemory("small");
		files.forEach(project::update);
		Snapshot snapshot = project.snapshot();
		assertEquals(List.of(), snapshot.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList());
		return snapshot.rules();
	}

	private static RuleBase read(String text) {
		return read(Map.of("small.bay", text));
	}

	private static String changed(String from, String to) {
		assertTrue(RULES.contains(from), from);
		return RULES.replace(from, to);
	}

	private static Difference compare(RuleBase old, RuleBase now) {
		return new Comparison().compareChecked(old, now, Listener.NONE);
	}

	private static List<String> told(String now) {
		RuleBase old = read(RULES);
		RuleBase other = read(now);
		Compared compared = Compared.of(old, other, compare(old, other));
		List<String> lines = new ArrayList<>(List.of(compared.headline()));
		for (Compared.Section section : compared.sections()) {
			lines.add("# " + section.title());
			section.entries().forEach(entry -> {
				lines.add(entry.text());
				entry.details().forEach(detail -> lines.add("  " + detail));
			});
		}
		return lines;
	}

	@Test
	void howItIsWrittenChangesNothing() {
		RuleBase old = read(RULES);
		String loose = RULES.replace("  given dark\n", "  // looked at with the ignition on\n\n      given dark\n").replace("at_least 12.4 V", "at_least 12400 mV");
		Map<String, String> split = new LinkedHashMap<>();
		int rules = loose.indexOf("rule charge");
		split.put("b.bay", loose.substring(0, rules));
		split.put("a.bay", loose.substring(rules));
		for (RuleBase now : List.of(read(loose), read(split), read(loose.substring(rules) + loose.substring(0, rules)))) {
			Difference difference = compare(old, now);
			assertEquals(Difference.Verdict.SAME, difference.verdict(), difference.toString());
			assertTrue(difference.edits().stream().allMatch(edit -> edit.weight() == Edit.Weight.NONE), difference.edits().toString());
			assertEquals(List.of(), difference.come());
			assertEquals(List.of(), difference.gone());
		}
	}

	@Test
	void namesChangeNothing() {
		String now = RULES.replace("dark", "lamp_dark").replace("\"Charge lamp stays lamp_dark\"", "\"Charge lamp stays dark\"").replace("rule charge ", "rule by_voltage ")
				.replace("alternator", "generator").replace("\"an generator bench\"", "\"an alternator bench\"").replace("lark", "finch").replace("test rest ", "test at_rest ")
				.replace("run rest\n", "run at_rest\n").replace(", rest 12.5", ", at_rest 12.5");
		assertEquals(List.of("No change in meaning: only names, words, jobs or places were edited.", //
				"# Renamed or moved", "family finch: was called lark", "sign lamp_dark: was called dark", "part generator: was called alternator",
				"test at_rest: was called rest", "rule by_voltage: was called charge"), told(now));
	}

	@Test
	void wordsAreToldAsWords() {
		assertEquals(List.of("No change in meaning: only names, words, jobs or places were edited.", //
				"# Edited: words, jobs and reviews", "rule charge: title and who, when and why edited"),
				told(changed("\"Charge lamp and voltage\"", "\"Lamp and voltage\"").replace("nine jobs", "ten jobs")));
	}

	@Test
	void whatIsDoneIsToldAsWork() {
		assertEquals(List.of("No vehicle ends otherwise. What is done, or how a rule says it, was edited.", //
				"# Edited: what is done at the vehicle", "test rest: time edited"), told(changed("takes 8 min", "takes 9 min")));
	}

	@Test
	void aLimitMovesWhatIsConfirmedAndWhoIsReferredTo() {
		List<String> told = told(changed("at_least 12.4 V", "at_least 12.6 V"));
		assertEquals(List.of("Some vehicles end otherwise.", //
				"# What changes for vehicles", "All vehicles: Charge lamp stays dark; Voltage at rest: 12.4 V to 12.5 V",
				"  no longer: Alternator: Diode open is confirmed", "  now: Battery: Low state of charge is suspected", //
				"# What follows from that", "All vehicles: Charge lamp stays dark; Voltage at rest: 12.4 V to 12.5 V", "  now: Refer to an alternator bench", //
				"# Finished jobs that end otherwise", "Job 1", "  before: Alternator: Diode open is confirmed, as the job ended",
				"  now: Refer to an alternator bench (the cause was alternator.diode, but the rules do not confirm it)"), told.subList(0, 12));
		assertTrue(told.contains("# New findings") && told.stream().anyMatch(line -> line.startsWith("error failing-job: ")), told.toString());
		assertEquals(List.of("# Edited: what is concluded", "rule charge: results edited"), told.subList(told.size() - 2, told.size()));
	}

	@Test
	void aRuleForSomeVehiclesIsToldOfThese() {
		List<String> told = told(RULES + """
				rule brush "Brush" {
				  for lark where engine is diesel
				  given slow
				  then confirms alternator.brush
				  because "Seen often."
				  source practice
				  by "P. Author" on 2026-02-02
				}
				""");
		assertEquals(List.of("Some vehicles end otherwise.", "# What changes for vehicles", "Lark L2 (invented) with engine diesel: Cranks slowly",
				"  now: Alternator: Brush worn is confirmed", "# What can come out now and could not", "Alternator: Brush worn is confirmed (Lark L2 (invented))"),
				told.subList(0, 6));
	}

	@Test
	void aLawMakesVehiclesImpossible() {
		List<String> told = told(RULES + "law \"A flat battery cranks slowly\" : when rest at_most 11.5 V then slow\n");
		assertEquals(List.of("No job ends otherwise, but the laws let other vehicles or findings be than before.", "# What changes for vehicles",
				"All vehicles: \"Cranks slowly\" is not seen; Voltage at rest: 11.5 V or less", "  could be; now the laws rule it out"), told.subList(0, 4), told.toString());
	}

	@Test
	void theSheetHoldsWhatIsTold() {
		RuleBase old = read(RULES);
		RuleBase now = read(changed("at_least 12.4 V", "at_least 12.6 V"));
		String sheet = Compared.of(old, now, compare(old, now)).sheet("What changes");
		assertTrue(sheet.startsWith("<!DOCTYPE html>") && sheet.contains("Voltage at rest: 12.4 V to 12.5 V") && sheet.contains("Reviewer"), sheet);
	}
}
