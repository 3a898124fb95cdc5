package org.baywright.workbench.project;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.eclipse.core.runtime.jobs.Job;
import org.junit.jupiter.api.Test;

/** Work shows as the platform's jobs and stops when these are cancelled. */
class JobWorkTest {

	@Test
	void cancelStopsWhatRuns() throws Exception {
		CountDownLatch began = new CountDownLatch(1);
		CountDownLatch ended = new CountDownLatch(1);
		new JobWork("a project").begin("Check the rules", progress -> {
			began.countDown();
			while (!progress.isCancelled()) {
				progress.done(1, 2);
				Thread.onSpinWait();
			}
			ended.countDown();
		});
		assertTrue(began.await(10, TimeUnit.SECONDS));
		assertTrue(Job.getJobManager().find(JobWork.FAMILY)[0].getName().equals("Check the rules (a project)"));
		assertFalse(ended.await(100, TimeUnit.MILLISECONDS));
		Job.getJobManager().cancel(JobWork.FAMILY);
		assertTrue(ended.await(10, TimeUnit.SECONDS));
	}

	/** Others wait for the end of a task, so it is run, though only to hear that it shall stop. */
	@Test
	void whatIsCancelledBeforeItBeginsIsToldSo() throws Exception {
		AtomicBoolean stopped = new AtomicBoolean();
		CountDownLatch ended = new CountDownLatch(1);
		Job.getJobManager().suspend();
		try {
			new JobWork("a project").begin("Check the rules", progress -> {
				stopped.set(progress.isCancelled());
				ended.countDown();
			});
			Job.getJobManager().cancel(JobWork.FAMILY);
		} finally {
			Job.getJobManager().resume();
		}
		assertTrue(ended.await(10, TimeUnit.SECONDS));
		assertTrue(stopped.get());
	}
}
