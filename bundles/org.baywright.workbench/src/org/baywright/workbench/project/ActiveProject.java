package org.baywright.workbench.project;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.ISelectionListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.IWorkbenchWindow;

/**
 * Follows which rule project the user works on in a window: that of the editor in front, else that of the selection in the
 * project tree, else the only one there is. It goes with its window. All methods belong to the screen's thread, and who
 * hears of states hears of them on it.
 */
public final class ActiveProject {

	private static final Map<IWorkbenchWindow, ActiveProject> OF_WINDOWS = new HashMap<>();

	private final Display display;
	private final IWorkbenchWindow window;
	private final ISelectionListener selected = this::select;
	private final List<Consumer<LiveState>> listeners = new CopyOnWriteArrayList<>();
	private final Consumer<LiveState> heard = this::hear;
	private OpenProject active;
	private boolean waiting;

	private final IPartListener2 parts = new IPartListener2() {
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
	};

	private ActiveProject(IWorkbenchWindow window) {
		this.window = window;
		display = window.getShell().getDisplay();
		window.getShell().addDisposeListener(event -> end());
		window.getPartService().addPartListener(parts);
		window.getSelectionService().addSelectionListener(selected);
		IEditorPart editor = window.getActivePage() == null ? null : window.getActivePage().getActiveEditor();
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

	/** Returns the follower of a window that is open. */
	public static ActiveProject of(IWorkbenchWindow window) {
		ActiveProject known = OF_WINDOWS.get(window);
		if (known == null) {
			known = new ActiveProject(window);
			OF_WINDOWS.put(window, known);
		}
		return known;
	}

	/**
	 * Tells a view of a window what is known of the project, each new state of it and each change to another project, until
	 * the view is gone; of states that follow one another closely only the last is told.
	 *
	 * @param view the view, or a control of it
	 * @param heard hears of it, first when what the view shows is made
	 * @param none is called then if there is no project
	 */
	public static void tell(IWorkbenchWindow window, Control view, Consumer<LiveState> heard, Runnable none) {
		// the window may not be whole yet while views are restored
		view.getDisplay().asyncExec(() -> {
			if (!view.isDisposed()) {
				ActiveProject follower = of(window);
				follower.listeners.add(heard);
				view.addDisposeListener(event -> follower.listeners.remove(heard));
				follower.state().ifPresentOrElse(heard, none);
			}
		});
	}

	/** Returns the project, if there is one. */
	public Optional<OpenProject> project() {
		return Optional.ofNullable(active);
	}

	/** Returns what is known of the project, if there is one. */
	public Optional<LiveState> state() {
		return project().map(OpenProject::state);
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

	private void end() {
		OF_WINDOWS.remove(window);
		window.getPartService().removePartListener(parts);
		window.getSelectionService().removeSelectionListener(selected);
		listeners.clear();
		if (active != null) {
			active.removeListener(heard);
			active = null;
		}
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

	private void hear(LiveState state) {
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
					LiveState now = active.state();
					listeners.forEach(listener -> listener.accept(now));
				}
			});
		}
	}
}
