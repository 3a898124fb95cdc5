package org.baywright.workbench.project;

import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IEditorReference;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;

/**
 * Finishes what the platform leaves half done when it starts again: editors that were not looked at yet bear the sign of
 * another kind of file, and the tree is folded.
 */
public final class Restored implements IStartup {

	/** More would delay the first look at the window. */
	private static final int MOST = 20;

	@Override
	public void earlyStartup() {
		Display display = PlatformUI.getWorkbench().getDisplay();
		display.asyncExec(() -> {
			for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
				IWorkbenchPage page = window.getActivePage();
				if (page != null) {
					finish(display, page);
				}
			}
		});
	}

	private static void finish(Display display, IWorkbenchPage page) {
		IEditorReference[] editors = page.getEditorReferences();
		for (int i = 0; i < Math.min(MOST, editors.length); i++) {
			IEditorReference editor = editors[i];
			// one after the other, so that keys and mouse are heard in between
			display.asyncExec(() -> {
				if (editor.getName().endsWith("." + Baywright.ENDING) && exists(editor)) {
					editor.getEditor(true);
				}
			});
		}
		IEditorPart active = page.getActiveEditor();
		IFile file = active == null ? null : Adapters.adapt(active.getEditorInput(), IFile.class);
		if (file != null && Nature.isOn(file.getProject())) {
			Places.reveal(page, file);
		}
	}

	private static boolean exists(IEditorReference editor) {
		try {
			return editor.getEditorInput().exists();
		} catch (PartInitException e) {
			return false;
		}
	}
}
