package org.baywright.presenter.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Jobs;
import org.baywright.language.text.SourceText;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Case;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.baywright.presenter.ProjectState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KeepingTest {

	private static final LocalDate DAY = LocalDate.of(2026, 11, 30);

	private static Keeping keeping(Bench bench) {
		return Keeping.of(bench, MendingTest.advice(bench), DAY);
	}

	@Test
	void theWholeJobIsKept() {
		Bench bench = MendingTest.osier().enter(MendingTest.ENGINE, "petrol").enter(MendingTest.VOLTS, "11.4").vin("1M8GDM9AXKP042788");
		Bench verified = MendingTest.verified(bench, MendingTest.advice(bench), "recharge").took("420");
		assertEquals("""
				job "Job 2026-11-30: No crank" {
				  on osier with engine petrol
				  vin "1M8GDM9AXKP042788"
				  found no_crank, volts 11.4 V
				  was battery.flat
				  took 420 min
				  spent 5
				  afterwards low absent, volts 12.6 V, no_crank absent
				}
				""", keeping(verified).text());
		assertEquals(Optional.empty(), keeping(verified).problem());
		assertTrue(keeping(verified.took("")).text().contains("  took 379 min\n"), "by the rules");
	}

	@Test
	void whatACheckWillReportIsTold() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		assertEquals("", keeping(bench).failure(Listener.NONE));
		String failure = keeping(bench.cause("battery.worn")).failure(Listener.NONE);
		assertEquals("The rules do not bring it to this end, which a check reports as an error: the cause was battery.worn, but the rules do not confirm it; the rules confirm battery.flat, which was not the cause.", failure);
	}

	@Test
	void whatItTookIsLeftOpenBeforeTheEnd() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		assertTrue(!keeping(bench).text().contains("took"), keeping(bench).text());
		assertTrue(keeping(bench.took("9")).text().contains("  took 9 min\n"), keeping(bench.took("9")).text());
	}

	@Test
	void withoutAnEndItIsNotKept() {
		Bench bench = MendingTest.osier();
		assertEquals(Optional.of("The cause is not known yet: say what it was, or to whom the job was referred."), keeping(bench).problem());
		assertEquals(Optional.empty(), keeping(bench.cause("strap.loose")).problem());
		assertTrue(keeping(bench.cause("strap.loose")).text().contains("  was strap.loose\n"));
		assertTrue(keeping(bench.refer("somebody")).text().contains("  was referred\n"));
		assertEquals(Optional.of("Give the job a number or a name by which it can be found again."), keeping(bench.cause("strap.loose")).named(" ").problem());
		Bench known = bench.enter(MendingTest.VOLTS, "11.4").cause("battery.worn");
		assertTrue(keeping(known).text().contains("  was battery.worn\n"), "who knows better is believed");
	}

	@Test
	void whatWasReadBeforeItWasReadAgainIsKeptAsAComment() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		Bench again = MendingTest.verify(MendingTest.verify(MendingTest.verify(bench, 4, "12.1"), 4, "12.1"), 4, "12.7");
		assertTrue(keeping(again).text().endsWith("  // found first after the repair: Voltage: 12.1 V\n}\n"), keeping(again).text());
		assertTrue(JobSheet.of(again, MendingTest.advice(again), "J", "").contains("<td>first 11.4 V, after the repair 12.1 V, then 12.7 V</td>"));
		assertEquals(List.of(), again.undo().now().done().again(), "a correction is taken back");
	}

	/** The language has no word for it, but whoever reads the file should know. */
	@Test
	void repairsInVainAndWhoGoesOnAreKeptAsComments() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		Bench failed = MendingTest.verify(MendingTest.verify(bench, 4, "12.7"), 5, "present");
		Bench handedOn = failed.backToWork(MendingTest.mending(failed).work().orElseThrow()).refer("a specialist\n}");
		String text = keeping(handedOn).text();
		assertTrue(text.endsWith("""
				  spent 5
				  // found first: Voltage: 11.4 V
				  // repaired in vain: Recharge; No crank present, expected absent, tried 3 times
				  // handed on to: a specialist }
				}
				"""), text);
		RuleProject project = RuleProject.inMemory("small");
		project.update("rules.bay", String.join("\n", MendingTest.TEXT) + "\n");
		project.update("jobs.bay", text);
		assertEquals(List.of(), project.snapshot().problems());
	}

	@Test
	void theNameIsFreeAndTheFileTheOneWithMostJobs() {
		RuleProject project = RuleProject.inMemory("small");
		project.update("rules.bay", String.join("\n", MendingTest.TEXT) + "\n");
		assertEquals("jobs.bay", keeping(bench(project)).file());
		project.update("b.bay", "job \"1\" { on osier found no_crank, volts 11 V was battery.flat }\njob \"2\" { on osier found no_crank, volts 10 V was battery.flat }\n");
		project.update("a.bay", "job \"Job 2026-11-30: No crank\" { on osier found no_crank, volts 9 V was battery.flat }\n");
		Keeping keeping = keeping(bench(project));
		assertEquals("b.bay", keeping.file());
		assertEquals("Job 2026-11-30: No crank (2)", keeping.name());
		assertEquals(Optional.of("There is already a job named 2."), keeping.named("2").problem());
		assertEquals("c.bay", keeping.in("c.bay").file());
		assertEquals("Job 2026-11-30: no complaint", keeping(bench(project).remove(MendingTest.NO_CRANK)).name());
		assertEquals(keeping.text(), keeping.appended(""));
		assertEquals("x\n\n" + keeping.text(), keeping.appended("x\n"));
	}

	private static Bench bench(RuleProject project) {
		return Bench.of(project.snapshot().rules()).choose("osier").enter(MendingTest.NO_CRANK, "present").enter(MendingTest.VOLTS, "11.4");
	}

	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void jobsOfTheExamplesAreKeptWithTheirVerification(String name) {
		ProjectState state = Examples.checked(name);
		RuleProject project = Examples.project(name);
		int kept = 0;
		for (Case job : state.rules().cases()) {
			RuleBase base = project.snapshot().rules();
			Bench bench = MendingTest.bench(base, job);
			Advice advice = MendingTest.advice(bench);
			for (Mending.Cause cause : Mending.of(bench, advice).causes()) {
				bench = MendingTest.verified(bench, advice, cause.repairs().get(0).repair());
			}
			bench = job.causes().isEmpty() ? bench.refer("somebody") : bench;
			Keeping keeping = Keeping.of(bench, advice, DAY);
			assertEquals(Optional.empty(), keeping.problem(), job.name());
			project.update(keeping.file(), keeping.appended(project.source(keeping.file()).map(SourceText::text).orElse("")));
			assertEquals(List.of(), project.snapshot().problems(), keeping.text());
			Case read = project.snapshot().rules().cases().stream().filter(each -> each.name().equals(keeping.name())).findFirst().orElseThrow();
			assertEquals(job.causes().isEmpty(), read.record().afterwards().isEmpty(), keeping.text());
			assertEquals(Mending.of(bench, advice).spent().minutes(), read.record().minutes(), keeping.text());
			kept++;
		}
		assertEquals(state.rules().cases().size(), kept);
		Jobs.run(project.snapshot().rules(), Listener.NONE).forEach(result -> assertTrue(result.passed(), result.job().name() + result.message()));
	}

	@Test
	void aNameThatTheFileHasAlreadyIsNotWrittenTwice() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		Keeping keeping = Keeping.of(bench, MendingTest.advice(bench), LocalDate.of(2026, 11, 30)).named("B");
		String twice = "job \"B\" {\n}\njob \"B (2)\" {\n}\n";
		assertFalse(keeping.isIn("job \"BC\" {\n}\n"));
		assertTrue(keeping.isIn(twice));
		assertEquals("B (3)", keeping.unlike(twice).name());
		assertEquals("B", keeping.unlike("").name());
	}

	@Test
	void aNameShowsAllItsLetters() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		Keeping keeping = Keeping.of(bench, MendingTest.advice(bench), LocalDate.of(2026, 11, 30));
		for (String name : List.of("A\u001b[D", "A\u200bB", "A\u202eB", "A".repeat(201))) {
			assertEquals("A name has at most 200 letters, and none that do not show. Write it anew.", keeping.named(name).problem().orElse(""));
		}
		assertEquals(Optional.empty(), keeping.named("\u00c4 12/b").problem());
	}
}
