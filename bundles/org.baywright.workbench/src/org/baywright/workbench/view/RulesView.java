package org.baywright.workbench.view;

import java.util.Optional;
import java.util.function.Consumer;

import org.baywright.model.Span;
import org.baywright.presenter.ProjectState;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.LiveState;
import org.baywright.workbench.project.Places;
import org.eclipse.core.resources.IProject;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.action.IContributionManager;
import org.eclipse.jface.action.IStatusLineManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.viewers.StructuredViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.part.ViewPart;
import org.eclipse.ui.progress.IWorkbenchSiteProgressService;

/** A view on the project that the user works on. */
public abstract class RulesView extends ViewPart {

	/** How long the status line says that something was done, in ms. */
	private static final int SAID = 8_000;

	private IProject project;
	private String about = "";
	private String own = "";
	private Composite body;
	private ProgressRow progress;

	@Override
	public final void createPartControl(Composite parent) {
		GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
		progress = new ProgressRow(parent, getSite().getWorkbenchWindow());
		body = new Composite(parent, SWT.NONE);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(body);
		createBody(body);
		IWorkbenchSiteProgressService busy = getSite().getService(IWorkbenchSiteProgressService.class);
		if (busy != null) {
			busy.showBusyForFamily(Baywright.ID);
		}
		ActiveProject.tell(getSite().getWorkbenchWindow(), parent, this::hear, () -> {
			about = ViewMessages.NoProject;
			describe();
		});
	}

	/** Returns all that the view shows. */
	final Composite body() {
		return body;
	}

	/** Makes the view's controls. */
	protected abstract void createBody(Composite parent);

	/** Shows a new state of the project. */
	protected abstract void show(ProjectState state);

	/** Tells what is shown, beside the project's name. */
	protected final void tellShown(String what) {
		own = what;
		describe();
	}

	private void describe() {
		String line = about + (own.isEmpty() || about.isEmpty() ? "" : " \u2013 ") + own;
		if (!line.equals(getContentDescription())) {
			setContentDescription(line);
		}
	}

	private void hear(LiveState state) {
		project = state.project();
		progress.watch();
		about = state.project().getName() + state.failure().map(failure -> ": " + failure)
				.orElse(state.texts().isEmpty() ? ViewMessages.ReadingNow : state.isFresh() ? "" : ViewMessages.CheckingNow);
		describe();
		state.shown().ifPresent(this::show);
	}

	/** Returns the project that is shown, if there is one. */
	protected final Optional<IProject> project() {
		return Optional.ofNullable(project);
	}

	/** Opens a place in its editor; does nothing for no place. */
	protected final void open(Span span) {
		if (project != null && !span.file().isEmpty()) {
			Places.open(project, span, true);
		}
	}

	/** Puts a text on the clipboard and says so in the window's status line for a while. */
	protected final void copy(Control control, String content, String said) {
		if (content.isEmpty()) {
			return;
		}
		Exporting.toClipboard(control.getDisplay(), content);
		IStatusLineManager line = getViewSite().getActionBars().getStatusLineManager();
		line.setMessage(said);
		control.getDisplay().timerExec(SAID, () -> {
			if (!control.isDisposed()) {
				line.setMessage(null);
			}
		});
	}

	/** Returns an action with a text, a picture and what it does. */
	public static Action action(String text, ImageDescriptor image, Runnable run) {
		Action action = new Action(text) {
			@Override
			public void run() {
				run.run();
			}
		};
		action.setImageDescriptor(image);
		action.setToolTipText(text);
		return action;
	}

	/** Puts actions into a tool bar and into the menu of the right button. */
	protected static void offer(IContributionManager bar, Control control, Action... actions) {
		MenuManager menu = new MenuManager();
		for (Action action : actions) {
			bar.add(action);
			menu.add(action);
		}
		control.setMenu(menu.createContextMenu(control));
	}

	/** Returns an action on what is chosen in a list; it is grey while nothing is. */
	protected static Action onChosen(StructuredViewer list, Action action) {
		action.setEnabled(false);
		list.addSelectionChangedListener(event -> action.setEnabled(!event.getSelection().isEmpty()));
		return action;
	}

	/** Returns an action that is on or off. */
	protected static Action toggle(String text, ImageDescriptor image, boolean on, Consumer<Boolean> changed) {
		Action action = new Action(text, IAction.AS_CHECK_BOX) {
			@Override
			public void run() {
				changed.accept(isChecked());
			}
		};
		action.setImageDescriptor(image);
		action.setToolTipText(text);
		action.setChecked(on);
		return action;
	}
}
