package org.baywright.workbench.project;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;

/** Unfolds the project tree to the file that is edited when the workbench starts again: the platform leaves it folded. */
public final class Restored implements IStartup {

	@Override
	public void earlyStartup() {
		PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
			for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
				IWorkbenchPage page = window.getActivePage();
				if (page != null) {
					unfold(page);
				}
			}
		});
	}

	private static void unfold(IWorkbenchPage page) {
		IEditorPart active = page.getActiveEditor();
		IFile file = active == null ? null : Adapters.adapt(active.getEditorInput(), IFile.class);
		if (file != null && Nature.isOn(file.getProject())) {
			Places.reveal(page, file);
		}
	}
}
