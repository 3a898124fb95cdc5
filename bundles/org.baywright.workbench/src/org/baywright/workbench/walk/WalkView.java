package org.baywright.workbench.walk;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.workbench.Accessible;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.LiveState;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IMemento;
import org.eclipse.ui.IViewSite;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.part.ViewPart;

/** Shows one step of the walk at a time, with a button that does it or leads there. */
public final class WalkView extends ViewPart {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.walk";

	private static final String AT = "step";

	private Walk walk;
	private LiveState known;
	private int at;
	private Label number;
	private Label title;
	private Text text;
	private Button go;
	private Button before;
	private Button next;

	/** Opens the walk where it was left. To be called on the screen's thread. */
	public static void open() {
		IWorkbenchPage page = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
		try {
			page.showView(ID);
		} catch (PartInitException e) {
			Baywright.log(WalkMessages.Missing, e);
		}
	}

	@Override
	public void init(IViewSite site, IMemento memento) throws PartInitException {
		super.init(site, memento);
		try {
			walk = Walk.read();
		} catch (IOException e) {
			throw new PartInitException(WalkMessages.Missing, e);
		}
		Integer left = memento == null ? null : memento.getInteger(AT);
		at = left == null ? 0 : Math.max(0, Math.min(left, walk.steps().size()));
	}

	@Override
	public void saveState(IMemento memento) {
		memento.putInteger(AT, at);
	}

	@Override
	public void createPartControl(Composite parent) {
		GridLayoutFactory.fillDefaults().margins(12, 10).spacing(6, 8).numColumns(2).applyTo(parent);
		number = new Label(parent, SWT.NONE);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(number);
		title = new Label(parent, SWT.WRAP);
		title.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.BANNER_FONT));
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(120, SWT.DEFAULT).applyTo(title);
		text = new Text(parent, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI | SWT.V_SCROLL);
		Accessible.name(text, walk.title());
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(120, 60).applyTo(text);
		go = button(parent, this::go);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(go);
		before = button(parent, () -> turn(at - 1));
		before.setText(WalkMessages.Before);
		next = button(parent, () -> {
			if (at == walk.steps().size()) {
				// whoever takes it again begins at its beginning
				turn(0);
				getSite().getPage().hideView(this);
			} else {
				turn(at + 1);
			}
		});
		turn(at);
		ActiveProject.tell(getSite().getWorkbenchWindow(), parent, this::hear, () -> {
			// the walk brings one in
		});
	}

	private void hear(LiveState state) {
		if (state.project().getName().equals(walk.project())) {
			known = state;
			tell();
		}
	}

	private static Button button(Composite parent, Runnable run) {
		Button button = new Button(parent, SWT.PUSH);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(button);
		button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> run.run()));
		return button;
	}

	private void turn(int step) {
		at = step;
		boolean over = at == walk.steps().size();
		number.setText(over ? "" : NLS.bind(WalkMessages.StepOf, at + 1, walk.steps().size()));
		title.setText(over ? walk.title() : now().title());
		go.setText(now().button());
		before.setEnabled(at > 0);
		next.setText(over ? WalkMessages.End : WalkMessages.Next);
		tell();
		go.getParent().layout(true, true);
	}

	private Walk.Step now() {
		return at == walk.steps().size() ? walk.end() : walk.steps().get(at);
	}

	private void tell() {
		List<String> said = new ArrayList<>();
		if (at == 0) {
			said.add(walk.about());
		}
		said.add(now().text());
		if (Walk.isDone(now(), Optional.ofNullable(known).filter(state -> state.project().isOpen()))) {
			said.add(now().said());
		}
		String all = String.join("\n\n", said);
		// who is reading it keeps the place
		if (!text.getText().equals(all)) {
			text.setText(all);
		}
	}

	private void go() {
		try {
			ICommandService commands = getSite().getService(ICommandService.class);
			IHandlerService handlers = getSite().getService(IHandlerService.class);
			handlers.executeCommand(commands.deserialize(now().command()), null);
		} catch (CommandException e) {
			Baywright.log(NLS.bind(WalkMessages.Failed, e.getMessage()), e);
			text.setText(NLS.bind(WalkMessages.Failed, e.getMessage()));
		}
	}

	@Override
	public void setFocus() {
		go.setFocus();
	}
}
