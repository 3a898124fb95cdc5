package org.baywright.workbench.project;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.language.ide.live.Work;
import org.baywright.presenter.Working;
import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.IJobChangeEvent;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.core.runtime.jobs.JobChangeAdapter;

/** Does work as the platform's jobs, so that it shows in the progress view and can be cancelled there. */
final class JobWork implements Work {

	/** What all jobs of this workbench belong to. */
	static final Object FAMILY = Baywright.ID;

	private static final String COUNTED = "part";

	private final String about;
	private final Map<Job, Working> running = new ConcurrentHashMap<>();

	/** @param about the project, for the title */
	JobWork(String about) {
		this.about = about;
	}

	/** Returns how far the work is that is going on, if there is any. */
	Optional<Working> working() {
		return running.values().stream().max(Comparator.comparingInt(Working::total));
	}

	/** Stops all work that is going on. */
	void stop() {
		running.keySet().forEach(Job::cancel);
	}

	@Override
	public void begin(String title, Task task) {
		AtomicBoolean begun = new AtomicBoolean();
		Job job = new Job(title + " (" + about + ")") {

			@Override
			protected IStatus run(IProgressMonitor monitor) {
				begun.set(true);
				task.run(new Shown(monitor, (done, total) -> running.computeIfPresent(this, (job, before) -> new Working(title, done, total, COUNTED))));
				return monitor.isCanceled() ? Status.CANCEL_STATUS : Status.OK_STATUS;
			}

			@Override
			public boolean belongsTo(Object family) {
				return FAMILY.equals(family);
			}
		};
		job.addJobChangeListener(new JobChangeAdapter() {
			@Override
			public void done(IJobChangeEvent event) {
				running.remove(job);
				// a job that is cancelled while it waits is never run, and the project would wait for its end for ever
				if (!begun.get()) {
					Work.onThreads().begin(title, progress -> task.run(new Stopped()));
				}
			}
		});
		running.put(job, Working.begun(title));
		job.setPriority(Job.SHORT);
		job.schedule();
	}

	/** Hears what is counted. */
	private interface Counter {
		void count(int done, int total);
	}

	/** Progress as the platform shows it. Totals may change from one check to the next. */
	private static final class Shown implements Progress {

		private final SubMonitor monitor;
		private final Counter counter;
		private int shown;

		Shown(IProgressMonitor monitor, Counter counter) {
			this.counter = counter;
			this.monitor = SubMonitor.convert(monitor, 1000);
		}

		@Override
		public synchronized void done(int done, int total) {
			counter.count(done, total);
			int now = total == 0 ? 0 : (int) (1000L * done / total);
			if (now > shown) {
				monitor.worked(now - shown);
				shown = now;
			}
		}

		@Override
		public boolean isCancelled() {
			return monitor.isCanceled();
		}
	}

	/** Progress of what somebody has cancelled before it began. */
	private static final class Stopped implements Progress {

		@Override
		public void done(int done, int total) {
			// nobody looks
		}

		@Override
		public boolean isCancelled() {
			return true;
		}
	}
}
