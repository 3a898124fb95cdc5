package org.baywright.workbench.view.grid;

import java.util.Optional;
import java.util.function.Supplier;

import org.baywright.language.ide.grid.GridEdit;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.view.Latest;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.IMessageProvider;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** A window of the grid that shows the rule text before it is written. */
abstract class WritingDialog extends TitleAreaDialog {

	/**
	 * What is asked for.
	 *
	 * @param wrong why it cannot be written; nothing if it can
	 * @param message what the window says if nothing is wrong
	 * @param edit works out what is written, on a worker thread
	 */
	record Asked(Optional<String> wrong, String message, Supplier<GridEdit> edit) {
	}

	private final String name;
	private final int width;
	private Text preview;
	private Latest writing;
	private GridEdit edit;

	WritingDialog(Shell parent, String name, int width) {
		super(parent);
		this.name = name;
		this.width = width;
		setShellStyle(getShellStyle() | SWT.RESIZE);
		setHelpAvailable(false);
	}

	/** Returns what is to be written. */
	final GridEdit edit() {
		return edit;
	}

	@Override
	protected void configureShell(Shell shell) {
		super.configureShell(shell);
		shell.setText(name);
	}

	@Override
	protected Control createDialogArea(Composite parent) {
		Composite area = (Composite) super.createDialogArea(parent);
		Composite fields = new Composite(area, SWT.NONE);
		GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
		createFields(fields);
		return area;
	}

	/** Makes what stands under the title; {@link #preview(Composite, int)} is part of it. */
	abstract void createFields(Composite fields);

	/** Returns what is asked for as the fields are now. */
	abstract Asked asked();

	final void note(Composite parent, String sentence) {
		Label label = new Label(parent, SWT.WRAP);
		label.setText(sentence.replace("&", "&&"));
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(width, SWT.DEFAULT).applyTo(label);
	}

	/** Makes a text that cannot be changed under its title; {@code style} says how long lines are shown. */
	final Text shown(Composite parent, String title, int height, int style) {
		Label label = new Label(parent, SWT.NONE);
		label.setText(title);
		GridDataFactory.fillDefaults().span(2, 1).applyTo(label);
		Text text = new Text(parent, SWT.BORDER | SWT.MULTI | SWT.READ_ONLY | SWT.V_SCROLL | style);
		Accessible.name(text, title);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(width, height).applyTo(text);
		return text;
	}

	final void preview(Composite parent, int height) {
		preview = shown(parent, GridMessages.WillBeWritten, height, SWT.H_SCROLL);
		preview.setFont(JFaceResources.getTextFont());
		writing = new Latest(GridMessages.Writing, preview);
	}

	@Override
	protected void createButtonsForButtonBar(Composite parent) {
		createButton(parent, IDialogConstants.OK_ID, GridMessages.Write, true);
		createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
		ask();
	}

	/** Shows what would be written as the fields are now. */
	final void ask() {
		Button ok = getButton(IDialogConstants.OK_ID);
		if (ok == null) {
			return; // the window is not whole yet
		}
		ok.setEnabled(false);
		Asked asked = asked();
		setErrorMessage(null);
		setMessage(asked.wrong().orElse(asked.message()), asked.wrong().isPresent() ? IMessageProvider.INFORMATION : IMessageProvider.NONE);
		writing.run(cancelled -> asked.edit().get(), made -> {
			edit = made;
			preview.setText(made.preview());
			ok.setEnabled(!made.isEmpty() && asked.wrong().isEmpty());
		});
	}
}
