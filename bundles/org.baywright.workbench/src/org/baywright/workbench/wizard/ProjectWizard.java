package org.baywright.workbench.wizard;

import java.lang.reflect.InvocationTargetException;
import java.util.SortedMap;
import java.util.TreeMap;

import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchWindow;

/** A wizard that makes a rule project and shows one of its files. */
abstract class ProjectWizard extends Wizard implements INewWizard {

	private final String title;
	private IWorkbenchWindow window;

	ProjectWizard(String title) {
		this.title = title;
	}

	@Override
	public void init(IWorkbench workbench, IStructuredSelection selection) {
		window = workbench.getActiveWorkbenchWindow();
		setWindowTitle(title);
		setNeedsProgressMonitor(true);
	}

	/**
	 * Makes the project, with progress; if the user cancels or it fails, nothing of it stays.
	 *
	 * @param name its name
	 * @param files its files by path
	 * @param opens the file to show
	 * @return whether it was made
	 */
	final boolean make(String name, SortedMap<String, String> files, String opens) {
		return make(name, files, new TreeMap<>(), opens);
	}

	/** As {@link #make(String, SortedMap, String)}, for rules that show pictures: their content by path. */
	final boolean make(String name, SortedMap<String, String> files, SortedMap<String, byte[]> pictures, String opens) {
		try {
			getContainer().run(true, true, monitor -> {
				try {
					ProjectMaker.make(name, files, pictures, monitor);
				} catch (CoreException e) {
					throw new InvocationTargetException(e);
				}
			});
		} catch (InvocationTargetException e) {
			failed(e.getCause());
			return false;
		} catch (InterruptedException e) {
			return false;
		}
		ProjectMaker.show(window, ResourcesPlugin.getWorkspace().getRoot().getProject(name), opens);
		return true;
	}

	final void failed(Throwable cause) {
		ErrorDialog.openError(getShell(), title, WizardMessages.ProjectFailed, Baywright.error(cause.getMessage(), cause));
	}
}
