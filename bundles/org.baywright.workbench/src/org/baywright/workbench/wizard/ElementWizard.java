package org.baywright.workbench.wizard;

import java.util.Optional;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.project.Places;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.IWizardPage;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;

/** A wizard that adds an element to a rule file of a project and shows it in the editor. */
abstract class ElementWizard extends Wizard implements INewWizard {

	private Optional<Target> target = Optional.empty();

	@Override
	public void init(IWorkbench workbench, IStructuredSelection selection) {
		target = Target.of(workbench.getActiveWorkbenchWindow(), selection);
		setWindowTitle(title());
	}

	@Override
	public void addPages() {
		addPage(target.map(this::page).orElseGet(NoProject::new));
	}

	abstract String title();

	abstract IWizardPage page(Target to);

	/** Returns the path of the file to write to. */
	abstract String file();

	/** Returns what to write. */
	abstract String text();

	@Override
	public boolean performFinish() {
		String path = file().endsWith("." + Baywright.ENDING) ? file() : file() + "." + Baywright.ENDING;
		IFile file = target.orElseThrow().project().getFile(IPath.fromPortableString(path));
		try {
			int offset = FileEdits.append(file, text());
			Places.open(file, offset, 0, true);
			return true;
		} catch (CoreException e) {
			ErrorDialog.openError(getShell(), title(), WizardMessages.NotWritten, e.getStatus());
			return false;
		}
	}

	private static final class NoProject extends WizardPage {

		NoProject() {
			super("none");
			setTitle(WizardMessages.ProjectTitle);
			setMessage(WizardMessages.NoProject, INFORMATION);
			setPageComplete(false);
		}

		@Override
		public void createControl(Composite parent) {
			setControl(new Label(parent, SWT.NONE));
		}
	}
}
