package org.baywright.workbench.project;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.PageBookView;

/**
 * Shows what belongs to the file that is edited when the workbench starts again: the platform leaves the project tree folded,
 * and the outline empty if a view had the keyboard.
 */
public final class Restored implements IStartup {

	@Override
	public void earlyStartup() {
		PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
			for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
				IWorkbenchPage page = window.getActivePage();
				if (page != null && page.getActiveEditor() != null) {
					unfold(page, page.getActiveEditor());
					if (page.findView(IPageLayout.ID_OUTLINE) instanceof PageBookView outline) {
						outline.partActivated(page.getActiveEditor());
					}
				}
			}
		});
	}

	private static void unfold(IWorkbenchPage page, IEditorPart active) {
		IFile file = Adapters.adapt(active.getEditorInput(), IFile.class);
		if (file != null && Nature.isOn(file.getProject())) {
			Places.reveal(page, file);
		}
	}
}
