package org.baywright.workbench.wizard;

import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.IWorkbenchWizard;
import org.eclipse.ui.PlatformUI;

/** Opens wizards. */
public final class Wizards {

	private Wizards() {
	}

	/** Opens the wizard for a new project. */
	public static void newProject() {
		open(new NewProjectWizard());
	}

	/** Opens the wizard that brings in an example. */
	public static void example() {
		open(new ExampleWizard());
	}

	/** Opens the wizard that exports a rule pack. */
	public static void exportPack() {
		open(new PackWizard());
	}

	/** Opens a wizard on what is selected. */
	public static void open(IWorkbenchWizard wizard) {
		IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
		ISelection selection = window.getSelectionService().getSelection();
		wizard.init(window.getWorkbench(), selection instanceof IStructuredSelection several ? several : StructuredSelection.EMPTY);
		new WizardDialog(window.getShell(), wizard).open();
	}
}
