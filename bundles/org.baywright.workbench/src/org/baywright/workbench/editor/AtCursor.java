package org.baywright.workbench.editor;

import java.util.Optional;

import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.action.IStatusLineManager;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.custom.CaretEvent;
import org.eclipse.swt.custom.CaretListener;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;

/**
 * What a command is about: the editor in front with its file and selection.
 *
 * @param editor the editor
 * @param edited its file
 * @param selection what is selected in it
 */
record AtCursor(ITextEditor editor, EditedFile edited, ITextSelection selection) {

	static Optional<AtCursor> of(ExecutionEvent event) {
		IEditorPart part = HandlerUtil.getActiveEditor(event);
		ITextEditor editor = part == null ? null : Adapters.adapt(part, ITextEditor.class);
		if (editor == null || !(editor.getSelectionProvider().getSelection() instanceof ITextSelection selection)) {
			return Optional.empty();
		}
		return EditedFile.of(editor).map(edited -> new AtCursor(editor, edited, selection));
	}

	/** Says something in the window's status line until the cursor moves. */
	void say(String message) {
		IStatusLineManager line = editor.getEditorSite().getActionBars().getStatusLineManager();
		line.setErrorMessage(message);
		if (editor.getAdapter(Control.class) instanceof StyledText text) {
			text.addCaretListener(new CaretListener() {
				@Override
				public void caretMoved(CaretEvent event) {
					text.removeCaretListener(this);
					line.setErrorMessage(null);
				}
			});
		}
	}
}
