package org.baywright.workbench.project;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.RulesPerspective;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialogWithToggle;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWindowListener;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.WorkbenchException;

/**
 * Offers the views for rules when the first rule file is opened in a workbench that shows others: nobody would look for
 * them in its menus. It asks once in each run, and never again where the user says so.
 */
public final class PerspectiveOffer implements IStartup, IPartListener2, IWindowListener {

	private static final String SILENT = "perspective.silent";

	private boolean asked;

	@Override
	public void earlyStartup() {
		PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
			PlatformUI.getWorkbench().addWindowListener(this);
			for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
				windowOpened(window);
			}
		});
	}

	@Override
	public void windowOpened(IWorkbenchWindow window) {
		window.getPartService().addPartListener(this);
		if (window.getActivePage() != null) {
			consider(window.getActivePage(), window.getActivePage().getActiveEditor());
		}
	}

	@Override
	public void partActivated(IWorkbenchPartReference part) {
		if (part.getPart(false) instanceof IEditorPart editor) {
			consider(part.getPage(), editor);
		}
	}

	private void consider(IWorkbenchPage page, IEditorPart editor) {
		IFile file = editor == null ? null : Adapters.adapt(editor.getEditorInput(), IFile.class);
		boolean rules = file != null && Baywright.ENDING.equalsIgnoreCase(file.getFileExtension());
		if (rules && !asked && !shown(page) && !Baywright.instance().getPreferenceStore().getBoolean(SILENT)) {
			asked = true;
			// not while the part is still on its way to the front
			page.getWorkbenchWindow().getShell().getDisplay().asyncExec(() -> offer(page.getWorkbenchWindow()));
		}
	}

	private static boolean shown(IWorkbenchPage page) {
		return page.getPerspective() != null && page.getPerspective().getId().equals(RulesPerspective.ID);
	}

	private static void offer(IWorkbenchWindow window) {
		if (window.getShell() == null || window.getShell().isDisposed()) {
			return;
		}
		MessageDialogWithToggle answer = MessageDialogWithToggle.openYesNoQuestion(window.getShell(), ProjectMessages.OfferTitle,
				ProjectMessages.OfferText, ProjectMessages.OfferNever, false, null, null);
		if (answer.getToggleState()) {
			Baywright.instance().getPreferenceStore().setValue(SILENT, true);
		}
		if (answer.getReturnCode() == IDialogConstants.YES_ID) {
			try {
				PlatformUI.getWorkbench().showPerspective(RulesPerspective.ID, window);
			} catch (WorkbenchException e) {
				Baywright.log("The views for rules do not open.", e);
			}
		}
	}

	@Override
	public void windowActivated(IWorkbenchWindow window) {
		// only windows that open matter here
	}

	@Override
	public void windowDeactivated(IWorkbenchWindow window) {
		// only windows that open matter here
	}

	@Override
	public void windowClosed(IWorkbenchWindow window) {
		// its listener ends with it
	}
}
