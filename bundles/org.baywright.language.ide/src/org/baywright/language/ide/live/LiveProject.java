package org.baywright.language.ide.live;

import java.time.Duration;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;

/**
 * A project while it is being edited. Each change is read as soon as those before it are, then the rules are checked; a
 * new change stops the check. Of several changes of one file that wait only the newest counts. All methods may be called
 * from any thread.
 */
public final class LiveProject implements AutoCloseable {

	private static final String READING = "Read the rules";
	private static final String CHECKING = "Check the rules";
	/** No file has this name. */
	private static final String BENEATH = "";

	private final RuleProject project;
	private final EditorServices services;
	private final Work work;
	private final Audience audience;
	private final Supplier<Checker> checkers;
	private Checker checker;

	private final Object lock = new Object();
	private final Map<String, Change> waiting = new TreeMap<>();
	private boolean readAgain;
	private boolean reading;
	private boolean checking;
	private boolean closed;
	private Snapshot toCheck;
	private Snapshot newest;
	private Report newestReport;

	private final Object telling = new Object();
	private long told = -1;

	/** A change that waits to be read. Whoever needs it first makes it; it goes on waiting until it is told. */
	private final class Change {

		private final Consumer<RuleProject> does;
		private boolean made;
		/** Whether a newer change of the same file has come; this one must not be made after that. */
		private volatile boolean replaced;

		Change(Consumer<RuleProject> does) {
			this.does = does;
		}

		void make() {
			synchronized (project) {
				if (!made && !replaced) {
					does.accept(project);
					made = true;
				}
			}
		}
	}

	/**
	 * Begins to read and check a project.
	 *
	 * @param project the project; nobody else changes it from now on
	 * @param work where reading and checking is done
	 * @param audience hears what is wrong
	 */
	public LiveProject(RuleProject project, Work work, Audience audience) {
		this(new EditorServices(project), work, audience, Checker::proving);
	}

	/**
	 * Begins to read and check a project.
	 *
	 * @param services the services of the project
	 * @param work where reading and checking is done
	 * @param audience hears what is wrong
	 * @param checkers makes a checker; again if one has failed, for it may remember something half
	 */
	public LiveProject(EditorServices services, Work work, Audience audience, Supplier<Checker> checkers) {
		this.services = services;
		project = services.project();
		this.work = work;
		this.audience = audience;
		this.checkers = checkers;
		checker = checkers.get();
		synchronized (lock) {
			readAgain = true;
			beginReading();
		}
		Lookout.begin(this);
	}

	// ---- changes ---------------------------------------------------------------------------------------------------

	/**
	 * Gives a file a new text, or adds it. Returns at once.
	 *
	 * @param file path relative to the project, with forward slashes
	 * @param text all of its text
	 */
	public void edit(String file, String text) {
		change(file, changed -> changed.update(file, text));
	}

	/** Reads a file again from disk; see {@link RuleProject#reload}. Returns at once. */
	public void reload(String file) {
		change(file, changed -> changed.reload(file));
	}

	/** Reads several files again from disk, all before anything is told. Returns at once. */
	public void reload(Collection<String> files) {
		synchronized (lock) {
			files.forEach(this::reload);
		}
	}

	/** Takes a file out of the project. Returns at once. */
	public void remove(String file) {
		change(file, changed -> changed.remove(file));
	}

	/**
	 * Looks whether what the project builds on has changed on the disk; it is then read again. Reads names, sizes and times
	 * only, unless something has changed. It is done now and then without being asked.
	 */
	public void lookBeneath() {
		if (snapshot().filter(Snapshot::isChangedBeneath).isPresent()) {
			change(BENEATH, RuleProject::lookBeneath);
		}
	}

	private void change(String file, Consumer<RuleProject> does) {
		synchronized (lock) {
			if (!closed) {
				Change older = waiting.put(file, new Change(does));
				if (older != null) {
					older.replaced = true;
				}
				beginReading();
			}
		}
	}

	/** Checks the rules again, as after a failure. Returns at once. */
	public void checkAgain() {
		synchronized (lock) {
			if (!closed) {
				readAgain = true;
				beginReading();
			}
		}
	}

	// ---- reading ---------------------------------------------------------------------------------------------------

	private void beginReading() {
		if (!reading) {
			reading = true;
			work.begin(READING, progress -> readAll());
		}
	}

	private void readAll() {
		while (true) {
			Map<String, Change> changes;
			synchronized (lock) {
				if (closed || waiting.isEmpty() && !readAgain) {
					reading = false;
					lock.notifyAll();
					return;
				}
				readAgain = false;
				changes = new TreeMap<>(waiting);
			}
			read(changes);
		}
	}

	private void read(Map<String, Change> changes) {
		Throwable failure = null;
		for (Map.Entry<String, Change> entry : changes.entrySet()) {
			try {
				entry.getValue().make();
			} catch (RuntimeException | StackOverflowError e) {
				failure = e;
			}
			synchronized (lock) {
				waiting.remove(entry.getKey(), entry.getValue());
			}
		}
		try {
			Snapshot snapshot = project.snapshot();
			synchronized (lock) {
				newest = snapshot;
				newestReport = null;
				toCheck = snapshot;
			}
			tell(snapshot, () -> audience.problems(snapshot));
			synchronized (lock) {
				beginChecking();
			}
			if (failure != null) {
				fail(snapshot, failure);
			}
		} catch (RuntimeException | StackOverflowError e) {
			Snapshot last;
			synchronized (lock) {
				toCheck = null;
				newestReport = null;
				last = newest;
			}
			if (last != null) {
				fail(last, e);
			}
		}
	}

	// ---- checking --------------------------------------------------------------------------------------------------

	private void beginChecking() {
		if (!checking && !closed && toCheck != null) {
			checking = true;
			work.begin(CHECKING, this::checkAll);
		}
	}

	private void checkAll(Work.Progress progress) {
		while (true) {
			Snapshot snapshot;
			synchronized (lock) {
				snapshot = toCheck;
				toCheck = null;
				if (closed || snapshot == null) {
					checking = false;
					lock.notifyAll();
					return;
				}
			}
			check(snapshot, progress);
		}
	}

	private void check(Snapshot snapshot, Work.Progress progress) {
		try {
			Report report = checker.check(snapshot.rules(), new Listener() {
				@Override
				public void progress(int done, int total) {
					progress.done(done, total);
				}

				@Override
				public boolean isCancelled() {
					return progress.isCancelled() || isOld(snapshot);
				}
			});
			synchronized (lock) {
				if (isOld(snapshot)) {
					return;
				}
				newestReport = report;
			}
			tell(snapshot, () -> audience.flaws(snapshot, report));
		} catch (CancellationException e) {
			if (!isOld(snapshot)) {
				fail(snapshot, e);
			}
		} catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
			checker = checkers.get();
			fail(snapshot, e);
		}
	}

	private boolean isOld(Snapshot snapshot) {
		synchronized (lock) {
			return closed || !waiting.isEmpty() || newest != snapshot;
		}
	}

	private void fail(Snapshot snapshot, Throwable failure) {
		tell(snapshot, () -> audience.failed(snapshot, failure));
	}

	private void tell(Snapshot snapshot, Runnable what) {
		synchronized (telling) {
			boolean late;
			synchronized (lock) {
				late = closed || snapshot.version() < told;
				told = Math.max(told, snapshot.version());
			}
			if (!late) {
				what.run();
			}
		}
	}

	// ---- asking ----------------------------------------------------------------------------------------------------

	/**
	 * Asks the services about a file as its newest text is, whether it was read yet or not. Call it from a worker thread;
	 * it waits while the project is being read.
	 *
	 * @param file path relative to the project
	 * @param question asks; it keeps nothing of the services
	 */
	public <T> T read(String file, Function<EditorServices, T> question) {
		synchronized (project) {
			Map<String, Change> changes;
			synchronized (lock) {
				changes = new TreeMap<>(waiting);
			}
			// what the names of this file mean depends on the others too
			changes.forEach((other, change) -> {
				try {
					change.make();
				} catch (RuntimeException e) {
					if (other.equals(file)) {
						throw e;
					}
					// whoever reads it next tells of it
				}
			});
			return question.apply(services);
		}
	}

	/** Returns the services, for questions that look at no text, such as {@link EditorServices#fixes}. */
	public EditorServices services() {
		return services;
	}

	/** Returns the texts as they were read last, if they were read yet. */
	public Optional<Snapshot> snapshot() {
		synchronized (lock) {
			return Optional.ofNullable(newest);
		}
	}

	/** Returns what was found in {@link #snapshot}, if it was checked yet. */
	public Optional<Report> report() {
		synchronized (lock) {
			return Optional.ofNullable(newestReport);
		}
	}

	/**
	 * Waits until everything is read and checked.
	 *
	 * @return whether it is; false if the time is up before
	 */
	public boolean awaitIdle(Duration longest) throws InterruptedException {
		long end = System.nanoTime() + longest.toNanos();
		synchronized (lock) {
			while (reading || checking || !waiting.isEmpty()) {
				long left = (end - System.nanoTime()) / 1_000_000;
				if (left <= 0 || closed) {
					return closed;
				}
				lock.wait(left);
			}
			return true;
		}
	}

	/** Ends all work; nothing is told from now on. */
	@Override
	public void close() {
		Lookout.end(this);
		synchronized (lock) {
			closed = true;
			waiting.clear();
			toCheck = null;
			lock.notifyAll();
		}
	}
}
