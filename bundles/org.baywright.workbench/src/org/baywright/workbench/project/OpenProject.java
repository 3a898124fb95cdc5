package org.baywright.workbench.project;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

import org.baywright.analysis.Report;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.live.Audience;
import org.baywright.language.ide.live.LiveProject;
import org.baywright.language.workspace.LoadListener;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Span;
import org.baywright.presenter.Working;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.preference.Preferences;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.IJobChangeEvent;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.core.runtime.jobs.JobChangeAdapter;

/** A rule project that the workbench has read: its texts, with those of open editors on top, and what is known of them. */
public final class OpenProject {

	private final IProject project;
	private final JobWork work;
	private final Reading reading;
	private final List<Consumer<LiveState>> listeners = new CopyOnWriteArrayList<>();
	private final CompletableFuture<LiveProject> live = new CompletableFuture<>();
	private final List<Consumer<LiveProject>> early = new ArrayList<>();
	private volatile LiveState state;
	private volatile boolean closed;

	OpenProject(IProject project) {
		this.project = project;
		work = new JobWork(project.getName());
		state = LiveState.unread(project);
		reading = new Reading(ProjectMessages.bind(ProjectMessages.Reading, project.getName()));
		reading.setPriority(Job.SHORT);
		reading.schedule();
	}

	/** Reads all files for the first time. */
	private final class Reading extends Job {

		private volatile Working working;

		Reading(String name) {
			super(name);
			working = Working.begun(ProjectMessages.ReadingFiles);
			addJobChangeListener(new JobChangeAdapter() {
				@Override
				public void done(IJobChangeEvent event) {
					working = null;
					if (!live.isDone()) {
						stopped();
					}
				}
			});
		}

		@Override
		protected IStatus run(IProgressMonitor monitor) {
			return open(monitor, (done, total) -> working = new Working(ProjectMessages.ReadingFiles, done, total, "file"));
		}

		@Override
		public boolean belongsTo(Object family) {
			return JobWork.FAMILY.equals(family);
		}
	}

	/** Nothing was read: whoever asks next reads anew, and those who wait wait no longer. */
	private void stopped() {
		RuleProjects.forget(this);
		live.cancel(false);
		if (state.failure().isEmpty()) {
			tell(LiveState.unread(project, ProjectMessages.Stopped));
		}
	}

	/** Returns how far reading or checking is, if either is going on. */
	public Optional<Working> working() {
		return Optional.ofNullable(reading.working).or(work::working);
	}

	/** Stops reading and checking; a later check begins anew. */
	public void stop() {
		reading.cancel();
		work.stop();
	}

	private IStatus open(IProgressMonitor monitor, BiConsumer<Integer, Integer> counter) {
		SubMonitor progress = SubMonitor.convert(monitor);
		try {
			RuleProject rules = RuleProject.open(Path.of(project.getLocationURI()), new LoadListener() {
				@Override
				public void fileRead(String file, int done, int total) {
					counter.accept(done, total);
					progress.setWorkRemaining(total - done + 1).worked(1);
				}

				@Override
				public boolean isCancelled() {
					return progress.isCanceled() || live.isCancelled();
				}
			});
			synchronized (early) {
				LiveProject opened = new LiveProject(rules, work, new Hearing());
				opened.services().signAs(Preferences::author);
				live.complete(opened);
				early.forEach(change -> change.accept(opened));
				early.clear();
			}
			return Status.OK_STATUS;
		} catch (CancellationException e) {
			return Status.CANCEL_STATUS;
		} catch (IOException e) {
			String message = ProjectMessages.bind(ProjectMessages.Unreadable, project.getName(), e.getMessage());
			tell(LiveState.unread(project, message));
			return Baywright.error(message, e);
		}
	}

	/** Returns the project in the workspace. */
	public IProject project() {
		return project;
	}

	/** Returns what is known now. */
	public LiveState state() {
		return state;
	}

	/** Hears of each new state, on a worker thread. */
	public void addListener(Consumer<LiveState> listener) {
		listeners.add(listener);
	}

	/** Stops hearing of new states. */
	public void removeListener(Consumer<LiveState> listener) {
		listeners.remove(listener);
	}

	/** Returns the file of a path as it stands in spans; it need not be there if it belongs to what the project builds on. */
	public IFile file(String path) {
		return Span.isElsewhere(path) ? Elsewhere.file(project, path).orElse(project.getFile(IPath.fromPortableString(path))) : project.getFile(IPath.fromPortableString(path));
	}

	// ---- changes ---------------------------------------------------------------------------------------------------

	/** Gives a file the text that its editor has now. Returns at once. */
	public void edit(IFile file, String text) {
		String path = path(file);
		change(to -> to.edit(path, text));
	}

	/** Reads a file again from disk. Returns at once. */
	public void reload(IFile file) {
		reload(List.of(path(file)));
	}

	/** Reads files again from disk, all before anything is told. Returns at once. */
	void reload(Collection<String> paths) {
		change(to -> to.reload(paths));
	}

	/** Reads all files again from disk and checks all of them. Returns at once; files with an open editor keep its text. */
	public void reloadAll() {
		TreeSet<String> paths = new TreeSet<>();
		state.texts().ifPresent(known -> paths.addAll(known.ownSources().keySet()));
		try {
			project.accept(resource -> {
				if (resource instanceof IFile file && isRules(file)) {
					paths.add(path(file));
				}
				return true;
			});
		} catch (CoreException e) {
			Baywright.log("The files of " + project.getName() + " cannot be listed.", e);
		}
		paths.removeIf(path -> EditedTexts.isEdited(file(path)));
		change(to -> {
			to.reload(paths);
			to.lookBeneath();
			to.checkAgain();
		});
	}

	private void change(Consumer<LiveProject> change) {
		synchronized (early) {
			if (!live.isDone()) {
				early.add(change);
				return;
			}
		}
		if (!isClosed()) {
			change.accept(live.join());
		}
	}

	// ---- questions -------------------------------------------------------------------------------------------------

	/** A question about a file. */
	public interface Question<T> {
		/** Answers it; {@code path} is the file as the services name it. */
		T answer(EditorServices services, String path);
	}

	/**
	 * Asks about a file whose text is this now. Waits until the project is read; not to be called on the screen's thread.
	 *
	 * @throws CancellationException if the project was closed
	 */
	public <T> T ask(IFile file, String text, Question<T> question) {
		String path = path(file);
		return live.join().read(path, services -> {
			// the project hears of each change of a file it knows; a late question must not bring back an older text
			if (services.project().source(path).isEmpty()) {
				services.project().update(path, text);
			}
			return question.answer(services, path);
		});
	}

	/**
	 * Returns the newest texts, with those of open editors. Waits until the project is read; not to be called on the
	 * screen's thread.
	 *
	 * @param isCancelled whether to wait no longer
	 * @throws CancellationException if the project was closed or somebody waits no longer
	 */
	public Snapshot snapshot(BooleanSupplier isCancelled) {
		while (true) {
			if (isCancelled.getAsBoolean()) {
				throw new CancellationException();
			}
			try {
				return live.get(100, TimeUnit.MILLISECONDS).read("", services -> services.project().snapshot());
			} catch (TimeoutException e) {
				// it is still being read
			} catch (ExecutionException e) {
				throw new IllegalStateException(e);
			} catch (InterruptedException e) {
				Thread.currentThread().interrupt();
				throw new CancellationException();
			}
		}
	}

	/** Returns the services without waiting; nothing if the project is not read yet. */
	public Optional<EditorServices> ready() {
		return live.isDone() && !isClosed() ? Optional.of(live.join().services()) : Optional.empty();
	}

	/** Returns whether the project was closed. */
	public boolean isClosed() {
		return live.isCancelled() || closed;
	}

	private void tell(LiveState now) {
		state = now;
		listeners.forEach(listener -> listener.accept(now));
	}

	void close() {
		closed = true;
		tell(LiveState.unread(project, ProjectMessages.Closed));
		listeners.clear();
		if (!live.cancel(false)) {
			live.thenAccept(LiveProject::close);
		}
	}

	/** Turns what the project tells into states and marks. */
	private final class Hearing implements Audience {

		@Override
		public void problems(Snapshot snapshot) {
			tell(state.read(snapshot));
			Markers.problems(project, snapshot.problems());
		}

		@Override
		public void flaws(Snapshot snapshot, Report report) {
			tell(state.checked(snapshot, report));
			Markers.flaws(project, report.flaws());
		}

		@Override
		public void failed(Snapshot snapshot, Throwable failure) {
			boolean stopped = failure instanceof CancellationException;
			String message = stopped ? ProjectMessages.Stopped : ProjectMessages.bind(ProjectMessages.Failed, failure.getMessage());
			tell(state.failed(snapshot, message));
			Markers.flaws(project, List.of());
			if (!stopped) {
				Baywright.log(message, failure);
			}
		}
	}

	// ---- files -----------------------------------------------------------------------------------------------------

	static String path(IFile file) {
		return file.getProjectRelativePath().toPortableString();
	}

	/** Returns whether a file is one of rules; see {@link RuleProject#isRuleFile}. */
	public static boolean isRules(IFile file) {
		return RuleProject.isRuleFile(path(file));
	}
}
