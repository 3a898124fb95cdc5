package org.baywright.workbench.project;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.ISelectionListener;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.PlatformUI;

/**
 * Follows which rule project the user works on: that of the editor in front, else that of the selection in the project
 * tree, else the only one there is. All methods belong to the screen's thread, and listeners are called on it.
 */
public final class ActiveProject {

	private static ActiveProject instance;

	private final Display display;
	private final IWorkbenchPage page;
	private final List<Consumer<ProjectState>> listeners = new CopyOnWriteArrayList<>();
	private final Consumer<ProjectState> heard = this::hear;
	private OpenProject active;
	private boolean waiting;

	private ActiveProject(IWorkbenchPage page) {
		this.page = page;
		display = page.getWorkbenchWindow().getShell().getDisplay();
		page.addPartListener(new IPartListener2() {
			@Override
			public void partActivated(IWorkbenchPartReference part) {
				if (part.getPart(false) instanceof IEditorPart editor) {
					follow(editor);
				}
			}

			@Override
			public void partBroughtToTop(IWorkbenchPartReference part) {
				partActivated(part);
			}
		});
		ISelectionListener selected = this::select;
		page.addSelectionListener(selected);
		IEditorPart editor = page.getActiveEditor();
		if (editor != null) {
			follow(editor);
		}
		if (active == null) {
			List<IProject> all = Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().getProjects())
					.filter(Nature::isOn).toList();
			if (!all.isEmpty()) {
				activate(all.get(0));
			}
		}
	}

	/** Returns the follower of the workbench's window. */
	public static ActiveProject get() {
		IWorkbenchPage page = PlatformUI.getWorkbench().getActiveWorkbenchWindow() == null
				? PlatformUI.getWorkbench().getWorkbenchWindows()[0].getActivePage()
				: PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
		if (instance == null || instance.page != page) {
			instance = new ActiveProject(page);
		}
		return instance;
	}

	/** Returns the project, if there is one. */
	public Optional<OpenProject> project() {
		return Optional.ofNullable(active);
	}

	/** Returns what is known of the project, if there is one. */
	public Optional<ProjectState> state() {
		return project().map(OpenProject::state);
	}

	/**
	 * Hears of each new state of the project and of each change to another project; of states that follow one another
	 * closely only the last is told.
	 */
	public void addListener(Consumer<ProjectState> listener) {
		listeners.add(listener);
	}

	/** Stops hearing. */
	public void removeListener(Consumer<ProjectState> listener) {
		listeners.remove(listener);
	}

	/** Makes a project the one to show, if it holds rules. */
	public void activate(IProject project) {
		if (!Nature.isOn(project) || active == RuleProjects.of(project)) {
			return;
		}
		if (active != null) {
			active.removeListener(heard);
		}
		active = RuleProjects.of(project);
		active.addListener(heard);
		listeners.forEach(listener -> listener.accept(active.state()));
	}

	private void follow(IEditorPart editor) {
		IFile file = Adapters.adapt(editor.getEditorInput(), IFile.class);
		if (file != null) {
			activate(file.getProject());
		}
	}

	private void select(IWorkbenchPart part, ISelection selection) {
		if (selection instanceof IStructuredSelection several && several.size() == 1) {
			IResource resource = Adapters.adapt(several.getFirstElement(), IResource.class);
			if (resource != null && resource.getProject() != null) {
				activate(resource.getProject());
			}
		}
	}

	private void hear(ProjectState state) {
		synchronized (this) {
			if (waiting) {
				return;
			}
			waiting = true;
		}
		if (!display.isDisposed()) {
			display.asyncExec(() -> {
				synchronized (this) {
					waiting = false;
				}
				if (active != null) {
					ProjectState now = active.state();
					listeners.forEach(listener -> listener.accept(now));
				}
			});
		}
	}
}
