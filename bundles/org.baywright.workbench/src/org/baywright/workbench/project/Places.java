package org.baywright.workbench.project;

import org.baywright.model.Span;
import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.navigator.resources.ProjectExplorer;
import org.eclipse.ui.part.ISetSelectionTarget;
import org.eclipse.ui.texteditor.ITextEditor;

/** Opens places of rules in their editor. To be called on the screen's thread. */
public final class Places {

	private Places() {
	}

	/** Unfolds the project tree to a file, if the tree is there. To be called on the screen's thread. */
	public static void reveal(IWorkbenchPage page, IFile file) {
		if (page.findView(ProjectExplorer.VIEW_ID) instanceof ISetSelectionTarget tree) {
			tree.selectReveal(new StructuredSelection(file));
		}
	}

	/**
	 * Opens a place and selects it.
	 *
	 * @param project the project that the span's file belongs to
	 * @param span the place
	 * @param focus whether the editor gets the keyboard
	 */
	public static void open(IProject project, Span span, boolean focus) {
		open(project.getFile(IPath.fromPortableString(span.file())), span.offset(), span.length(), focus);
	}

	/** Opens a file and selects a stretch of it. */
	public static void open(IFile file, int offset, int length, boolean focus) {
		if (!file.exists()) {
			return;
		}
		try {
			IWorkbenchPage page = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
			IEditorPart editor = IDE.openEditor(page, file, focus);
			ITextEditor text = editor.getAdapter(ITextEditor.class);
			if (text != null) {
				text.selectAndReveal(offset, length);
				if (offset == 0 && text.getAdapter(Control.class) instanceof StyledText widget) {
					// notes above elements come later and push the first line away
					widget.getDisplay().timerExec(400, () -> {
						if (!widget.isDisposed() && widget.getCaretOffset() == 0) {
							widget.setTopIndex(0);
						}
					});
				}
			}
		} catch (PartInitException e) {
			Baywright.log("The editor of " + file.getFullPath() + " does not open.", e);
		}
	}
}
