package org.baywright.workbench.project;

import org.baywright.model.PictureFile;
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
		if (span.isElsewhere()) {
			Elsewhere.file(project, span.file()).filter(file -> !span.file().endsWith(Span.PACK)).ifPresentOrElse(
					file -> open(file, span.offset(), span.length(), focus), () -> openCopy(project, span, focus));
			return;
		}
		open(project.getFile(IPath.fromPortableString(span.file())), span.offset(), span.length(), focus);
	}

	private static void openCopy(IProject project, Span span, boolean focus) {
		try {
			Elsewhere.open(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage(), project, span, focus);
		} catch (PartInitException e) {
			Baywright.log("The text of " + span.file() + " is not shown.", e);
		}
	}

	/** Opens a place of a file as it stands in spans; see {@link #open(IProject, Span, boolean)}. */
	public static void open(OpenProject project, String file, int offset, int length) {
		open(project.project(), new Span(file, 1, 1, 1, 1, offset, length), true);
	}

	/** Opens a file and selects a stretch of it. */
	public static void open(IFile file, int offset, int length, boolean focus) {
		open(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage(), file, offset, length, focus);
	}

	/** Opens a file on a page and selects a stretch of it. */
	public static void open(IWorkbenchPage page, IFile file, int offset, int length, boolean focus) {
		if (!file.exists()) {
			return;
		}
		if (PictureFile.type(file.getName()).isPresent() && file.getLocation() != null) {
			PictureWindow.open(page.getWorkbenchWindow().getShell(), file.getLocation().toPath());
			return;
		}
		try {
			IEditorPart editor = IDE.openEditor(page, file, focus);
			ITextEditor text = editor == null ? null : editor.getAdapter(ITextEditor.class);
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
