package org.baywright.presenter.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.formatting2.Formatting;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.words.Names;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What wizards write is right as it stands, and what is missing is said. */
class DraftsTest {

	private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
	private static final FamilyDraft FAMILY = new FamilyDraft("Tarn T3 \"light\" van", "tarn", "2015", "2021", "Diesel 2.0, petrol",
			"WZZT3");

	private static RuleProject project(ProjectDraft draft) {
		RuleProject project = RuleProject.inMemory("p");
		draft.files().forEach(project::update);
		return project;
	}

	private static void assertClean(RuleProject project) {
		Snapshot snapshot = project.snapshot();
		assertLaidOut(project);
		assertEquals(List.of(), snapshot.problems().stream().map(Problem::message).toList());
		assertEquals(List.of(), new Analysis().check(snapshot.rules(), Listener.NONE).flaws().stream().map(f -> f.message()).toList());
	}

	private static void assertLaidOut(RuleProject project) {
		Formatting formatting = project.services().getInstance(Formatting.class);
		project.snapshot().sources().forEach((file, text) -> assertEquals(text, formatting.format(project.resource(file).orElseThrow()).orElseThrow()));
	}

	@Test
	void aNewProjectHasNothingAgainstIt() {
		ProjectDraft draft = new ProjectDraft("vans", FAMILY, true, "R. \"Bob\" Falk", DAY);
		assertEquals(Optional.empty(), draft.problem(List.of("other")));
		RuleProject project = project(draft);
		assertClean(project);
		assertEquals(2, project.snapshot().rules().rules().size());
		assertEquals("Tarn T3 \"light\" van", project.snapshot().rules().family("tarn").orElseThrow().title());
	}

	@Test
	void aFamilyWithoutAnythingIsAFamily() {
		RuleProject project = RuleProject.inMemory("p");
		project.update("f.bay", new FamilyDraft("A van", "a_van", "", "", "", "").text());
		assertClean(project);
	}

	@Test
	void whatIsWrongWithAProjectIsSaid() {
		assertProblem("already a project", new ProjectDraft("Vans", FAMILY, false, "", DAY).problem(List.of("vans")));
		assertProblem("becomes a folder", new ProjectDraft("a/b", FAMILY, false, "", DAY).problem(List.of()));
		assertProblem("too long", new ProjectDraft("a".repeat(201), FAMILY, false, "", DAY).problem(List.of()));
		assertEquals(Optional.empty(), new ProjectDraft("a".repeat(200), FAMILY, false, "", DAY).problem(List.of()));
		assertProblem("Give the project a name", new ProjectDraft(" ", FAMILY, false, "", DAY).problem(List.of()));
		assertProblem("who writes", new ProjectDraft("vans", FAMILY, true, "", DAY).problem(List.of()));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "|x|||||family a title", "Van||||||name", "Van|2x|||||letters, digits",
			"Van|tarn|||||already something named tarn", "Van|x|2015||||both years", "Van|x|15|16|||four digits",
			"Van|x|2020|2015|||comes after", "Van|x|||petrol,Petrol||name of its own", "Van|x|||2.0||name of its own",
			"Van|x||||wzz|capital letters", "Van|x||||WIQ|without I, O and Q" })
	void whatIsWrongWithAFamilyIsSaid(String title, String name, String from, String to, String engines, String vin, String says) {
		FamilyDraft draft = new FamilyDraft(text(title), text(name), text(from), text(to), text(engines), text(vin));
		assertProblem(says, draft.problem(List.of("tarn")));
	}

	private static String text(String cell) {
		return cell == null ? "" : cell;
	}

	private static void assertProblem(String says, Optional<String> problem) {
		assertTrue(problem.orElse("nothing").contains(says), () -> problem + " does not say " + says);
	}

	@ParameterizedTest
	@CsvSource({ "Battery too low,battery_too_low", "12 V battery,v_battery", "Tür offen,tur_offen", "!!!,''", "Ground (engine),ground_engine" })
	void titlesSuggestNames(String title, String name) {
		assertEquals(name, Names.suggest(title));
	}

	@Test
	void takenNamesGetANumber() {
		assertEquals("low_3", Names.free("low", List.of("low", "low_2")));
	}

	private static RuleDraft rule(String low, String high, Map<String, Ending> endings) {
		return new RuleDraft("Half a charge", "half_charge", List.of("tarn"), "no_start", "rest_voltage", low, high, endings,
				"It is enough.", "A. Author", DAY);
	}

	@Test
	void aNewRuleIsReadAsItWasMeant() {
		RuleProject project = project(new ProjectDraft("vans", FAMILY, true, "A. Author", DAY));
		Map<String, Ending> endings = new LinkedHashMap<>();
		endings.put("met", new Ending(Ending.Kind.NOTHING, ""));
		endings.put("below", new Ending(Ending.Kind.SUSPECTS, "battery.discharged"));
		endings.put("above", new Ending(Ending.Kind.REFERS, "the \"charger\" desk"));
		RuleDraft draft = rule("11", "12,2", endings);
		assertEquals(Optional.empty(), draft.problem(project.snapshot().rules()));
		assertEquals("""
				rule half_charge "Half a charge" {
				  for tarn
				  given no_start
				  run rest_voltage
				  expect 11 V .. 12.2 V
				  met   : proves nothing
				  below : suspects battery.discharged
				  above : refers "the \\"charger\\" desk"
				  because "It is enough."
				  source practice
				  by "A. Author" on 2026-03-02
				}
				""", draft.text(project.snapshot().rules()));
		project.update("more.bay", draft.text(project.snapshot().rules()));
		assertLaidOut(project);
		assertEquals(List.of(), project.snapshot().problems());
		assertEquals(3, project.snapshot().rules().rules().size());
	}

	/** A technician does not know which words the language has taken. */
	@Test
	void aNameThatIsAWordOfTheLanguageIsWrittenAsAName() {
		RuleProject project = project(new ProjectDraft("vans", FAMILY, true, "A. Author", DAY));
		RuleDraft draft = new RuleDraft("Run", "run", List.of("tarn"), "no_start", "rest_voltage", "11", "",
				Map.of("below", new Ending(Ending.Kind.CONFIRMS, "battery.discharged")), "It is empty.", "A. Author", DAY);
		project.update("more.bay", draft.text(project.snapshot().rules()));
		assertEquals(List.of(), project.snapshot().problems());
		assertEquals("Run", project.snapshot().rules().rule("run").orElseThrow().title());
	}

	@Test
	void whatIsExpectedIsWrittenWholeAndNamedResultsAsNames() {
		RuleProject project = project(new ProjectDraft("vans", FAMILY, true, "A. Author", DAY));
		project.update("lamp.bay", "test lamp \"Lamp\" { results lit, dark, ^below }\n");
		Map<String, Ending> endings = Map.of("below", new Ending(Ending.Kind.CONFIRMS, "battery.discharged"));
		assertTrue(rule("11", "12", endings).text(project.snapshot().rules()).contains("  expect 11 V .. 12 V\n  below : confirms"));
		RuleDraft named = new RuleDraft("Lamp", "lamp_tells", List.of(), "", "lamp", "", "", Map.of("below",
				new Ending(Ending.Kind.CONFIRMS, "battery.discharged"), "dark", new Ending(Ending.Kind.NOTHING, "")), "x", "y", DAY);
		assertEquals(Optional.empty(), named.problem(project.snapshot().rules()));
		String text = named.text(project.snapshot().rules());
		assertTrue(text.contains("  run lamp\n  on dark   : proves nothing\n  on ^below : confirms battery.discharged\n"), text);
		project.update("more.bay", text);
		assertEquals(List.of(), project.snapshot().problems());
		assertLaidOut(project);
	}

	@Test
	void whatHasNoUpperEndHasNothingAbove() {
		RuleProject project = project(new ProjectDraft("vans", FAMILY, true, "A. Author", DAY));
		Map<String, Ending> endings = Map.of("below", new Ending(Ending.Kind.CONFIRMS, "battery.discharged"), "above",
				new Ending(Ending.Kind.CONFIRMS, "battery.discharged"));
		String text = rule("12", "", endings).text(project.snapshot().rules());
		assertTrue(text.contains("expect at_least 12 V\n  below : confirms battery.discharged\n  because"), text);
	}

	@Test
	void whatIsWrongWithARuleIsSaid() {
		var rules = project(new ProjectDraft("vans", FAMILY, true, "A. Author", DAY)).snapshot().rules();
		Map<String, Ending> endings = Map.of("below", new Ending(Ending.Kind.CONFIRMS, "battery.discharged"));
		assertProblem("Say which values", rule("", "", endings).problem(rules));
		assertProblem("A value is a number", rule("low", "", endings).problem(rules));
		assertProblem("end before they begin", rule("12", "11", endings).problem(rules));
		assertProblem("nothing expected lies there", rule("20", "30", endings).problem(rules));
		assertProblem("at least one result", rule("12", "", Map.of()).problem(rules));
		assertProblem("choose the fault that it clears", rule("12", "", Map.of("met", new Ending(Ending.Kind.CLEARS, ""))).problem(rules));
		assertProblem("already something named low_battery", new RuleDraft("x", "low_battery", List.of(), "", "rest_voltage", "12", "",
				endings, "b", "a", DAY).problem(rules));
		assertProblem("Choose the test", new RuleDraft("x", "y", List.of(), "", "", "", "", endings, "b", "a", DAY).problem(rules));
		assertProblem("Say why", new RuleDraft("x", "y", List.of(), "", "rest_voltage", "12", "", endings, "", "a", DAY).problem(rules));
	}

	@Test
	void severalFoldersOfRulesAreToldFromOneSet() {
		assertEquals(List.of("electric", "light"), RuleFolders.of(List.of("light/rules.bay", "electric/jobs/old.bay", "electric/rules.bay")));
		assertEquals(List.of(), RuleFolders.of(List.of("light/rules.bay", "electric/rules.bay", "common.bay")));
		assertEquals(List.of(), RuleFolders.of(List.of("light/rules.bay", "light/more/rules.bay")));
	}
}
