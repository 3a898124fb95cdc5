package org.baywright.workbench.project;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Function;

import org.baywright.analysis.Analysis;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.workspace.LoadListener;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** A rule project that the workbench has read: its texts, with those of open editors on top, and what is known of them. */
public final class OpenProject {

	private final IProject project;
	private final List<Consumer<ProjectState>> listeners = new CopyOnWriteArrayList<>();
	private final Analysis analysis = new Analysis();
	private final Map<String, Optional<String>> pending = new LinkedHashMap<>();
	private final Job job;
	private final CompletableFuture<EditorServices> services = new CompletableFuture<>();
	private volatile boolean closed;
	private RuleProject rules;
	private volatile ProjectState state;

	OpenProject(IProject project) {
		this.project = project;
		state = new ProjectState(project, Optional.empty(), Optional.empty(), Optional.empty());
		job = Job.create("Checking the rules of " + project.getName(), this::run);
		job.schedule();
	}

	/** Returns the project in the workspace. */
	public IProject project() {
		return project;
	}

	/** Returns what is known now. */
	public ProjectState state() {
		return state;
	}

	/** Hears of each new state, on a worker thread. */
	public void addListener(Consumer<ProjectState> listener) {
		listeners.add(listener);
	}

	/** Stops hearing of new states. */
	public void removeListener(Consumer<ProjectState> listener) {
		listeners.remove(listener);
	}

	/** Returns the file of a path as it stands in spans. */
	public IFile file(String path) {
		return project.getFile(IPath.fromPortableString(path));
	}

	/** Gives a file the text that its editor has now. Returns at once. */
	public void edit(IFile file, String text) {
		change(path(file), Optional.of(text));
	}

	/** Reads a file again from disk. Returns at once. */
	public void reload(IFile file) {
		change(path(file), Optional.empty());
	}

	/** Reads all files again from disk. Returns at once. */
	public void reloadAll() {
		job.schedule();
	}

	private void change(String path, Optional<String> text) {
		synchronized (pending) {
			pending.put(path, text);
		}
		job.schedule();
	}

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
		return services(services -> {
			services.project().update(path, text);
			return question.answer(services, path);
		});
	}

	/** Asks about the project as it is. Waits until it is read, which it is once there is a state with texts. */
	public <T> T services(Function<EditorServices, T> question) {
		EditorServices ready = services.join();
		synchronized (ready.project()) {
			return question.apply(ready);
		}
	}

	/** Returns the services without waiting; nothing if the project is not read yet. */
	public Optional<EditorServices> ready() {
		return services.isDone() && !closed ? Optional.of(services.join()) : Optional.empty();
	}

	/** Returns whether the project was closed. */
	public boolean isClosed() {
		return closed;
	}

	private IStatus run(IProgressMonitor monitor) {
		try {
			if (rules == null) {
				rules = RuleProject.open(Path.of(project.getLocationURI()), LoadListener.NONE);
				services.complete(new EditorServices(rules));
			}
			Map<String, Optional<String>> changes;
			synchronized (pending) {
				changes = new LinkedHashMap<>(pending);
				pending.clear();
			}
			changes.forEach((path, text) -> text.ifPresentOrElse(is -> rules.update(path, is), () -> rules.reload(path)));
			Snapshot snapshot = rules.snapshot();
			tell(new ProjectState(project, Optional.of(snapshot), state.checked(), Optional.empty()));
			Markers.problems(project, snapshot.problems());
			Report report = analysis.check(snapshot.rules(), new Listener() {
			});
			tell(new ProjectState(project, Optional.of(snapshot), Optional.of(new ProjectState.Checked(snapshot, report)),
					Optional.empty()));
			Markers.findings(project, report.findings());
			return Status.OK_STATUS;
		} catch (CancellationException e) {
			return Status.CANCEL_STATUS;
		} catch (IOException e) {
			return Baywright.error("The project cannot be read.", e);
		}
	}

	private void tell(ProjectState now) {
		state = now;
		listeners.forEach(listener -> listener.accept(now));
	}

	void close() {
		closed = true;
		services.cancel(false);
		job.cancel();
		listeners.clear();
	}

	static String path(IFile file) {
		return file.getProjectRelativePath().toPortableString();
	}

	/** Returns whether a file is one of rules. Folders that begin with a dot and build output hold none. */
	public static boolean isRules(IFile file) {
		if (!Baywright.ENDING.equals(file.getFileExtension())) {
			return false;
		}
		for (String segment : file.getProjectRelativePath().segments()) {
			if (segment.startsWith(".") || segment.equals("target")) {
				return false;
			}
		}
		return true;
	}
}
