package org.baywright.language.ide.live;

/** Where long work is done, apart from whoever asks for it. */
public interface Work {

	/** Something to do. */
	interface Task {

		/** @param progress hears how far it is, and knows whether somebody wants it to stop */
		void run(Progress progress);
	}

	/** Hears how far a task is. Methods may be called from several threads. */
	interface Progress {

		/**
		 * @param done how much is done
		 * @param total how much there is to do
		 */
		void done(int done, int total);

		/** Returns whether somebody wants the task to stop. */
		boolean isCancelled();
	}

	/**
	 * Begins a task soon, on a thread of its own, and returns at once. The task is run in any case, also if somebody has
	 * cancelled it before it began: others may wait for its end.
	 *
	 * @param title what the task does, as an author would say it
	 * @param task the task; it never throws
	 */
	void begin(String title, Task task);

	/** Returns work on daemon threads, which nobody watches. */
	static Work onThreads() {
		return (title, task) -> {
			Thread thread = new Thread(() -> task.run(new Unwatched()), title);
			thread.setDaemon(true);
			thread.start();
		};
	}
}
