package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.baywright.analysis.check.FailingJob;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link FailingJob}: a rule base is tried on finished jobs, the oldest way of validating one. */
class FailingJobTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(FailingJob.class);
		assertTrue(rules.report().cases().get(0).passed());
	}

	@Test
	void aJobThatComesToItsEndPasses() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank, rest 11.9 V was battery.flat }
				""");
	}

	@Test
	void theCauseIsCleared() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank, rest 12 V was battery.flat }
				//  ^^^^^ error failing-job: The job "Job" fails: the cause was battery.flat, but the rules clear it.
				//   also: line 8 (rule a clears battery.flat)
				""");
	}

	@Test
	void twoThingsThatCannotBothHaveBeenFound() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn
				module ecm
				code low on ecm = raw "1"
				sign no_crank
				part battery { fault flat }
				rule a { given no_crank, low present then confirms battery.flat }
				rule b { given no_crank, low active then suspects battery.flat }
				job "Job" { on tarn found no_crank, low active, ecm silent was battery.flat }
				//  ^^^^^ error failing-job: The job "Job" fails: ecm and what was found before it say two things of ecm, so one of them is wrong.
				job "Other" { on tarn found no_crank, low active, ecm answers was battery.flat }
				""");
	}

	@Test
	void theCauseIsNotConfirmed() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank, dark was battery.flat }
				//  ^^^^^ error failing-job: The job "Job" fails: the cause was battery.flat, but the rules do not confirm it.
				//   also: line 8 (rule a would confirm battery.flat and did not apply)
				""");
	}

	@Test
	void anotherCauseIsConfirmed() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank, rest 11.9 V, load breaks_down was battery.flat }
				//  ^^^^^ error failing-job: The job "Job" fails: the rules confirm battery.open_cell, which was not the cause.
				//   also: line 9 (rule b confirms battery.open_cell)
				""");
	}

	@Test
	void theJobWasReferred() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank, rest 12.4 V was referred }
				""");
	}

	@Test
	void theJobWasReferredButNoRuleRefers() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank was referred }
				//  ^^^^^ error failing-job: The job "Job" fails: the job was referred, but no rule refers.
				//   also: line 10 (rule c would refer and did not apply)
				""");
	}

	@Test
	void noVehicleCanShowThis() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_crank
				sign dark
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				test load { results holds, breaks_down }
				law "Without current no light" : when rest below 3 V then dark
				rule a { given no_crank run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { for tarn where engine is diesel given no_crank run load on breaks_down : confirms battery.open_cell }
				rule c { given no_crank unexplained, rest at_least 12 V then refers "the starter specialist" }
				job "Job" { on tarn with engine diesel found no_crank, rest 2.9 V, dark absent was battery.flat }
				//  ^^^^^ error failing-job: The job "Job" fails: the laws say that no vehicle can show these findings together.
				//   also: line 7 (the law “Without current no light” excludes it)
				""");
	}

	@Test
	void aReferralOnTopOfTheCause() {
		MarkedFlaws.check(FailingJob.class, """
				family tarn
				sign no_crank
				sign click
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a { given click run rest expect at_least 12 V met : clears battery.flat below : confirms battery.flat }
				rule b { given no_crank unexplained then refers "the starter specialist" }
				job "Job" { on tarn found no_crank, click, rest 11 V was battery.flat }
				//  ^^^^^ error failing-job: The job "Job" fails: the rules find the cause, and refer the job as well.
				//   also: line 7 (rule b refers to the starter specialist)
				""");
	}
}
