package org.baywright.workbench.view.grid;

import java.util.List;
import java.util.Map;

import org.baywright.language.ide.grid.GridEdit;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.Snapshot;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.editor.TextChanges;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.text.undo.IDocumentUndoManager;

/** Writes what was chosen in the grid, in each file as one change that one undo takes back. */
final class GridWriter {

	private GridWriter() {
	}

	/**
	 * Writes everything, or tells why not.
	 *
	 * @param snapshot the texts that the changes are in terms of
	 */
	static void write(Shell shell, OpenProject project, Snapshot snapshot, GridEdit edit) {
		boolean stale = edit.edits().keySet().stream().anyMatch(path -> {
			String read = snapshot.sources().get(path);
			return read == null ? project.file(path).exists() : !FileEdits.isText(project.file(path), read);
		});
		if (stale) {
			MessageDialog.openInformation(shell, GridMessages.EditTitle, GridMessages.Stale);
			return;
		}
		try {
			for (Map.Entry<String, List<TextEdit>> entry : edit.edits().entrySet()) {
				IFile file = project.file(entry.getKey());
				if (file.exists()) {
					FileEdits.change(file, document -> together(document, entry.getValue()));
				} else {
					FileEdits.append(file, Edits.apply("", entry.getValue()));
				}
			}
		} catch (CoreException e) {
			Baywright.log(GridMessages.NotWritten, e);
			ErrorDialog.openError(shell, GridMessages.EditTitle, GridMessages.NotWritten, e.getStatus());
		}
	}

	private static void together(IDocument document, List<TextEdit> edits) throws BadLocationException {
		IDocumentUndoManager undo = DocumentUndoManagerRegistry.getDocumentUndoManager(document);
		if (undo != null) {
			undo.beginCompoundChange();
		}
		try {
			TextChanges.together(edits).apply(document);
		} finally {
			if (undo != null) {
				undo.endCompoundChange();
			}
		}
	}
}
