package org.baywright.presenter.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.Variable;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Case;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.presenter.Examples;
import org.baywright.presenter.Link;
import org.baywright.presenter.ProjectState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JobRuleTest {

	private static final LocalDate DAY = LocalDate.of(2026, 11, 30);

	private static JobRule rule(Bench bench, String test, String cause) {
		return JobRule.of(bench, test, cause, "R. Falk", DAY);
	}

	@Test
	void takesTheBandAroundTheResult() {
		JobRule draft = rule(MendingTest.osier().enter(MendingTest.VOLTS, "12.2"), "volts", "strap.gone");
		assertEquals(Optional.empty(), draft.problem());
		assertEquals("""
				rule strap_gone_by_volts "Gone, by Voltage" {
				  for osier
				  given no_crank
				  run volts
				  on 12 V .. 12.3 V : confirms strap.gone
				  because "Write why the result proves it."
				  source jobs
				  by "R. Falk" on 2026-11-30
				}
				""", draft.text());
		JobRule.Blank blank = draft.blanks().get(0);
		assertEquals(JobRule.WHY, draft.text().substring(blank.offset(), blank.offset() + blank.length()));
	}

	@ParameterizedTest
	@CsvSource({ "11,on below 12 V", "12.4,on above 12.3 V" })
	void aBandMayBeOpen(String found, String on) {
		String text = rule(MendingTest.osier().enter(MendingTest.VOLTS, found), "volts", "strap.gone").text();
		assertTrue(text.contains("  " + on + " : confirms strap.gone\n"), text);
	}

	@Test
	void aResultThatNoRuleNamesStandsAlone() {
		RuleBase rules = Examples.rules("family van", "sign dead", "part p { fault f }", "test volts { measures V 0 .. 18 step 0.1 over high }",
				"test look { results fine, ^below }");
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.TEST, "volts"), "4.2").enter(new Variable(Variable.Kind.TEST, "look"), "below");
		assertTrue(rule(bench, "volts", "p.f").text().contains("  on 4.2 V : confirms p.f\n"), rule(bench, "volts", "p.f").text());
		assertFalse(rule(bench, "volts", "p.f").text().contains("given"), "no sign was present");
		assertTrue(rule(bench, "look", "p.f").text().contains("  on ^below : confirms p.f\n"));
		assertTrue(rule(bench.enter(new Variable(Variable.Kind.TEST, "volts"), "high"), "volts", "p.f").text().contains("  on high : confirms p.f\n"));
		assertEquals(List.of("look", "volts"), JobRule.tests(rules, bench.now().readings()).stream().map(JobRule.Choice::name).toList());
		assertEquals(List.of(new JobRule.Choice("p.f", "p: f")), JobRule.faults(rules));
	}

	@Test
	void whatIsMissingIsSaid() {
		Bench bench = MendingTest.osier();
		assertEquals(Optional.of("Choose the fault that was the cause."), rule(bench, "volts", "").problem());
		assertEquals(Optional.of("Choose the test that decided."), rule(bench, "no_crank", "strap.gone").problem());
		assertEquals(Optional.of("The test “Voltage” was not done in this job."), rule(bench, "volts", "strap.gone").problem());
		assertFalse(JobRule.of(bench.enter(MendingTest.VOLTS, "11"), "volts", "strap.gone", " ", DAY).text().contains("by \""));
	}

	// ---- whether it fits ---------------------------------------------------------------------------------------------

	@Test
	void aRuleThatFitsSaysSo() {
		Bench bench = MendingTest.osier().enter(MendingTest.HUM, "present").enter(MendingTest.LOAD, "pass");
		Trial.Result fit = new Trial().of(rule(bench, "load", "strap.gone"), Listener.NONE);
		assertEquals("", fit.stillFails());
		assertTrue(fit.gone().stream().anyMatch(flaw -> flaw.check().equals("unfound-fault")), fit.toString());
		assertTrue(fit.headline().startsWith("With this rule the rules find the cause of the job. "), fit.headline());
	}

	@Test
	void aRuleForAnotherCauseThanThatOfTheJobSaysSo() {
		Bench bench = MendingTest.osier().enter(MendingTest.HUM, "present").enter(MendingTest.LOAD, "pass").cause("strap.loose");
		Trial.Result fit = new Trial().of(rule(bench, "load", "strap.gone"), Listener.NONE);
		assertFalse(fit.fits());
		assertTrue(fit.headline().startsWith("With this rule the rules find “Strap: Gone”, but the job's cause is “Strap: Loose”. "), fit.headline());
		Trial.Result same = new Trial().of(rule(bench.cause("strap.gone"), "load", "strap.gone"), Listener.NONE);
		assertTrue(same.headline().startsWith("With this rule the rules find the cause of the job. "), same.headline());
	}

	@Test
	void aRuleThatDoesNotFitSaysWhy() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "12.6");
		Trial.Result fit = new Trial().of(rule(bench, "volts", "battery.flat"), Listener.NONE);
		assertFalse(fit.fits());
		assertTrue(fit.added().stream().anyMatch(flaw -> flaw.check().equals("contradiction")), fit.toString());
		assertEquals("the cause was battery.flat, but the rules clear it.", fit.stillFails());
		assertTrue(fit.headline().startsWith("The rules still do not bring the job to its end: the cause was battery.flat, but the rules clear it. "), fit.headline());
	}

	/** What is told before a rule is written is what a check finds after it was written and read again. */
	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void theTrialSaysWhatTheCheckFindsAfterwards(String name) {
		ProjectState state = Examples.checked(name);
		Trial trial = new Trial();
		Case job = state.rules().cases().stream().filter(each -> !each.causes().isEmpty() && !JobRule.tests(state.rules(), each.found()).isEmpty()).findFirst().orElseThrow();
		String test = JobRule.tests(state.rules(), job.found()).get(0).name();
		// the known cause, and one that makes trouble
		for (String cause : List.of(job.causes().get(0), state.rules().faults().stream().map(fault -> fault.name()).filter(fault -> !job.causes().contains(fault)).findFirst().orElseThrow())) {
			JobRule draft = JobRule.of(state.rules(), job, test, cause, "R. Falk", DAY);
			Trial.Result fit = trial.of(draft, Listener.NONE);
			RuleProject project = Examples.project(name);
			project.update("drafts.bay", draft.text());
			Snapshot read = project.snapshot();
			assertEquals(List.of(), read.problems(), draft.text());
			Report report = new Analysis().check(read.rules(), Listener.NONE);
			List<Flaw> before = state.report().orElseThrow().flaws();
			assertEquals(report.flaws().stream().filter(flaw -> before.stream().noneMatch(old -> old.id().equals(flaw.id()) || old.message().equals(flaw.message())))
					.map(Flaw::id).sorted().toList(), fit.added().stream().map(Flaw::id).sorted().toList(), draft.text());
			assertEquals(cause.equals(job.causes().get(0)), fit.stillFails().isEmpty(), draft.text());
			assertEquals(fit.added().stream().anyMatch(flaw -> flaw.severity() == Severity.ERROR), report.hasErrors());
		}
	}

	@Test
	void aFailingJobTeachesTheRuleThatItLacked() {
		RuleProject project = RuleProject.inMemory("small");
		project.update("rules.bay", String.join("\n", MendingTest.TEXT).replace(" hazards gas", "") + "\njob \"1\" { on osier found hum, load fail was strap.gone }\n");
		RuleBase rules = project.snapshot().rules();
		CaseResult failing = new Analysis().check(rules, Listener.NONE).cases().get(0);
		assertFalse(failing.passed());
		Lacking lacking = Lacking.of(rules, failing);
		assertEquals("The cause was strap.gone, but the rules do not confirm it.", lacking.headline());
		JobRule draft = JobRule.of(rules, failing.job(), "load", "strap.gone", "R. Falk", DAY);
		Trial.Result fit = new Trial().of(draft, Listener.NONE);
		assertTrue(fit.gone().stream().anyMatch(flaw -> flaw.check().equals("failing-job")), fit.toString());
		assertEquals("", fit.stillFails());
		project.update("drafts.bay", draft.text());
		assertEquals(List.of(), project.snapshot().problems());
		Report report = new Analysis().check(project.snapshot().rules(), Listener.NONE);
		assertFalse(report.hasErrors(), report.flaws().toString());
		assertTrue(report.cases().get(0).passed());
	}

	// ---- what the rules lack -----------------------------------------------------------------------------------------

	private static String lacking(Bench bench, String cause) {
		Lacking lacking = Lacking.of(bench, MendingTest.advice(bench), cause);
		return lacking.headline() + lacking.rules().stream()
				.map(rule -> "\n" + rule.title() + ": " + rule.lines().stream().map(Link::text).collect(Collectors.joining(" | "))).collect(Collectors.joining());
	}

	@Test
	void eachRuleSaysWhatItLacks() {
		assertEquals("1 rule can confirm “Battery: Flat”, and has not.\nFlat at rest: waits for: the result of “Voltage”", lacking(MendingTest.osier(), "battery.flat"));
		assertEquals("1 rule can confirm “Battery: Flat”, and has not.\nFlat at rest: 12.0 V to 12.3 V: suspects “Battery: Flat”",
				lacking(MendingTest.osier().enter(MendingTest.VOLTS, "12.1"), "battery.flat"));
		assertEquals("1 rule can confirm “Battery: Worn”, and has not.\nWorn under load: cannot be so any more: “Battery: Flat” is cleared | because of: Voltage: 11.0 V",
				lacking(MendingTest.osier().enter(MendingTest.VOLTS, "11"), "battery.worn"));
		assertEquals("The rules confirm “Battery: Flat” already.", lacking(MendingTest.osier().enter(MendingTest.VOLTS, "11"), "battery.flat"));
		assertEquals("No rule can confirm “Strap: Gone”.", lacking(MendingTest.osier(), "strap.gone"));
		RuleBase rules = Examples.rules("family van", "family bus", "sign dead", "part p { fault f }", "test look { results fine, poor }",
				"rule a \"A\" { for bus given dead run look on poor : confirms p.f because \"a\" source memory by \"R. Falk\" on 2026-03-02 }");
		assertEquals("1 rule can confirm “p: f”, and has not.\nA: is for other vehicles: bus", lacking(Bench.of(rules).choose("van"), "p.f"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "0", "11.9", "12", "12.3", "12.4", "18" })
	void theBandHoldsTheResult(String found) {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, found);
		Domain domain = MendingTest.SMALL.test("volts").orElseThrow().domain();
		IndexSet band = rule(bench, "volts", "strap.gone").rule().outcomes().get(0).values().orElseThrow().in(domain);
		assertTrue(band.contains(domain.indexOf(bench.now().readings().get(1))), band.toString());
	}
}
