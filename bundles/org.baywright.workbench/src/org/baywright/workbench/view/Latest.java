package org.baywright.workbench.view;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;

import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.IJobFunction;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Control;

/**
 * Works something out aside for a control and shows it on the screen's thread; a newer request cancels an older one. To
 * be called on the screen's thread.
 */
public final class Latest {

	private final String name;
	private final Control owner;
	private Job running;

	/**
	 * @param name what the work is called where running work is listed
	 * @param owner nothing is shown any more once it is disposed
	 */
	public Latest(String name, Control owner) {
		this.name = name;
		this.owner = owner;
		owner.addDisposeListener(event -> cancel());
	}

	/**
	 * Begins some work.
	 *
	 * @param work done on a worker thread; may ask whether to stop
	 * @param show gets what was worked out, unless something newer was asked for meanwhile
	 */
	public <T> void run(Function<BooleanSupplier, T> work, Consumer<T> show) {
		cancel();
		Job[] own = new Job[1];
		own[0] = Job.create(name, (IJobFunction) monitor -> work(own[0], work, show, monitor::isCanceled));
		running = own[0];
		own[0].schedule();
	}

	private <T> IStatus work(Job own, Function<BooleanSupplier, T> work, Consumer<T> show, BooleanSupplier cancelled) {
		try {
			T result = work.apply(cancelled);
			if (!cancelled.getAsBoolean() && !owner.isDisposed()) {
				owner.getDisplay().asyncExec(() -> {
					if (running == own && !owner.isDisposed()) {
						running = null;
						show.accept(result);
					}
				});
			}
			return Status.OK_STATUS;
		} catch (CancellationException e) {
			return Status.CANCEL_STATUS;
		} catch (RuntimeException e) {
			return Baywright.error(name, e);
		}
	}

	/** Stops the work that is going on, if any. */
	public void cancel() {
		if (running != null) {
			running.cancel();
			running = null;
		}
	}
}
