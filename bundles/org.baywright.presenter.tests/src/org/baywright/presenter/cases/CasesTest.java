package org.baywright.presenter.cases;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Jobs;
import org.baywright.presenter.Examples;
import org.baywright.presenter.ProjectState;
import org.junit.jupiter.api.Test;

class CasesTest {

	@Test
	void runningJobsAloneSaysWhatTheCheckSays() {
		for (String name : Examples.ALL) {
			ProjectState state = Examples.checked(name);
			assertEquals(state.report().orElseThrow().cases(), Jobs.run(state.rules(), Listener.NONE));
		}
		ProjectState failing = Examples.checked("flawed/failing-job.bay");
		assertEquals(failing.report().orElseThrow().cases(), Jobs.run(failing.rules(), Listener.NONE));
	}

	@Test
	void tellsHowFarItIsAndStops() {
		ProjectState state = Examples.checked("light-van");
		List<String> heard = new ArrayList<>();
		Jobs.run(state.rules(), new Listener() {
			@Override
			public void progress(int done, int total) {
				heard.add(done + "/" + total);
			}
		});
		int all = state.rules().cases().size();
		assertEquals(all, heard.size());
		assertEquals(all + "/" + all, heard.get(all - 1));
		assertThrows(CancellationException.class, () -> Jobs.run(state.rules(), new Listener() {
			@Override
			public boolean isCancelled() {
				return true;
			}
		}));
	}

	@Test
	void everyPassingJobOfTheExamplesNamesTheRuleThatDecided() {
		for (String name : Examples.ALL) {
			ProjectState state = Examples.checked(name);
			Cases cases = Cases.of(state.rules(), state.report().orElseThrow().cases(), Cases.Filter.ALL);
			assertEquals("All " + cases.all().size() + " jobs pass.", cases.headline());
			assertEquals(cases.all(), cases.shown());
			for (Job job : cases.all()) {
				assertFalse(job.decided().isEmpty(), job.toString());
				assertTrue(job.decided().stream().allMatch(link -> link.leads()), job.toString());
				assertTrue(job.place().leads());
				assertFalse(job.end().isEmpty());
			}
			assertEquals(cases.all().size(), cases.families().stream().mapToInt(tally -> tally.passed() + tally.failed()).sum());
			assertEquals(List.of(), cases.with(new Cases.Filter(true, "")).shown());
		}
	}

	@Test
	void aFailingJobSaysWhy() {
		ProjectState state = Examples.checked("flawed/failing-job.bay");
		Cases cases = Cases.of(state.rules(), state.report().orElseThrow().cases(), new Cases.Filter(true, ""));
		assertFalse(cases.shown().isEmpty());
		Job job = cases.shown().get(0);
		assertTrue(job.message().startsWith("The cause was "), job.message());
		assertTrue(cases.headline().contains("fail"), cases.headline());
		assertTrue(cases.families().get(0).text().contains("fail"), cases.families().toString());
		assertEquals(List.of(job), cases.with(new Cases.Filter(false, job.name().toUpperCase())).shown());
	}

	@Test
	void theRuleThatDecidedIsTheOneWhoseResultSaysSo() {
		ProjectState state = Examples.text("family osier", "sign dead \"Dead\"", "part fuse \"Fuse\" { fault blown \"Blown\" }",
				"test look { results whole, blown }", "test feed { measures V 0 .. 20 step 0.1 }",
				"rule a \"Look\" { given dead run look on blown : confirms fuse.blown on whole : suspects fuse.blown",
				"  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }",
				"rule b \"Feed\" { given dead run feed on below 1 V : confirms fuse.blown on at_least 1 V : proves nothing",
				"  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }",
				"job \"J 1\" { on osier found dead, look whole, feed 0.4 V was fuse.blown }",
				"job \"J 2\" { on osier found dead, look blown, feed 4 V was fuse.blown }");
		Cases cases = Cases.of(state.rules(), state.report().orElseThrow().cases(), Cases.Filter.ALL);
		assertEquals(List.of("Feed: confirms “Fuse: Blown”"), texts(cases.all().get(0)));
		assertEquals(List.of("Look: confirms “Fuse: Blown”"), texts(cases.all().get(1)));
		assertEquals("Dead: 2 jobs, all pass", cases.signs().get(0).text());
		assertEquals(2, cases.all().get(0).fired().size());
	}

	private static List<String> texts(Job job) {
		return job.decided().stream().map(link -> link.text()).toList();
	}

	@Test
	void noJobsIsSaid() {
		assertEquals("There are no finished jobs in these rules.",
				Cases.of(Examples.rules("family osier"), List.of(), Cases.Filter.ALL).headline());
		assertEquals("The jobs have not been run yet.", Cases.NONE.headline());
	}
}
