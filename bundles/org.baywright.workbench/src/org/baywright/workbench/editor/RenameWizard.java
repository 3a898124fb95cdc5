package org.baywright.workbench.editor;

import java.util.Optional;

import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.ltk.core.refactoring.Refactoring;
import org.eclipse.ltk.ui.refactoring.RefactoringWizard;
import org.eclipse.ltk.ui.refactoring.UserInputWizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Asks for the new name and shows what will change. */
final class RenameWizard extends RefactoringWizard {

	private final RenameProcessor processor;
	private final String old;

	RenameWizard(Refactoring refactoring, RenameProcessor processor, String old) {
		super(refactoring, DIALOG_BASED_USER_INTERFACE | PREVIEW_EXPAND_FIRST_NODE);
		this.processor = processor;
		this.old = old;
		setDefaultPageTitle(EditorMessages.RenameTitle);
	}

	@Override
	protected void addUserInputPages() {
		addPage(new NamePage());
	}

	private final class NamePage extends UserInputWizardPage {

		private final Job checking = Job.createSystem(EditorMessages.RenameTitle, (ICoreRunnable) monitor -> check());
		private Text text;

		NamePage() {
			super("name");
		}

		private void check() {
			String name = processor.name();
			Optional<String> refused = processor.refused(name);
			Display.getDefault().asyncExec(() -> {
				if (!text.isDisposed() && text.getText().equals(name)) {
					setErrorMessage(refused.orElse(null));
					setPageComplete(refused.isEmpty());
				}
			});
		}

		@Override
		public void createControl(Composite parent) {
			Composite fields = new Composite(parent, SWT.NONE);
			GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
			new Label(fields, SWT.NONE).setText(EditorMessages.RenameNew);
			text = new Text(fields, SWT.BORDER);
			GridDataFactory.fillDefaults().grab(true, false).hint(260, SWT.DEFAULT).applyTo(text);
			text.setText(old);
			text.selectAll();
			text.addModifyListener(event -> {
				processor.setName(text.getText());
				// what cannot be done is said while it is typed; until that is known nothing can be finished
				setPageComplete(false);
				setErrorMessage(null);
				if (!text.getText().isBlank() && !text.getText().equals(old)) {
					checking.schedule();
				}
			});
			setPageComplete(false);
			setControl(fields);
			text.setFocus();
		}
	}
}
