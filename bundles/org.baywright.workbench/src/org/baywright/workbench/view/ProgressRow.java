package org.baywright.workbench.view;

import java.util.Optional;

import org.baywright.presenter.Working;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.ui.IWorkbenchWindow;

/** Shows above a view how far reading or checking is, with a way to stop it; takes no room while nothing goes on. */
final class ProgressRow {

	/** Work that is done sooner is not shown: the view would jump at each key that is typed. */
	private static final int PATIENCE_MILLIS = 500;
	private static final int EACH_MILLIS = 200;

	private final IWorkbenchWindow window;
	private final Composite row;
	private final Label text;
	private final ProgressBar bar;
	private boolean watching;

	ProgressRow(Composite parent, IWorkbenchWindow window) {
		this.window = window;
		row = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(3).margins(4, 2).applyTo(row);
		GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(row);
		row.setVisible(false);
		text = new Label(row, SWT.NONE);
		GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(text);
		bar = new ProgressBar(row, SWT.SMOOTH);
		bar.setMaximum(1000);
		Accessible.name(bar, ViewMessages.Progress);
		GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).grab(true, false).applyTo(bar);
		Button stop = new Button(row, SWT.PUSH | SWT.FLAT);
		stop.setText(ViewMessages.Stop);
		stop.addSelectionListener(
				SelectionListener.widgetSelectedAdapter(event -> ActiveProject.of(window).project().ifPresent(OpenProject::stop)));
	}

	/** Looks from now on until nothing goes on any more. */
	void watch() {
		if (!watching) {
			watching = true;
			row.getDisplay().timerExec(PATIENCE_MILLIS, this::look);
		}
	}

	private void look() {
		if (row.isDisposed()) {
			return;
		}
		Optional<Working> working = ActiveProject.of(window).project().flatMap(OpenProject::working);
		working.ifPresent(now -> {
			text.setText(now.text());
			bar.setSelection(now.thousandths());
		});
		watching = working.isPresent();
		// not whether it can be seen: the view may lie behind another one just now, and must not show it when it comes back
		if (row.getVisible() != watching || watching) {
			((GridData) row.getLayoutData()).exclude = !watching;
			row.setVisible(watching);
			row.getParent().layout(true, true);
		}
		if (watching) {
			row.getDisplay().timerExec(EACH_MILLIS, this::look);
		}
	}
}
