package org.baywright.workbench.editor;

import java.util.List;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.text.TextEdit;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRewriteTarget;

/** Lays the file out, or the selected lines. */
public final class Tidy extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		AtCursor.of(event).ifPresent(at -> {
			String before = at.edited().document().get();
			boolean part = at.selection().getLength() > 0;
			int offset = part ? at.selection().getOffset() : 0;
			int length = part ? at.selection().getLength() : before.length();
			Ask.then(EditorMessages.TidyTitle, at.edited(),
					(EditorServices services, String path) -> services.format(path, offset, length), edits -> edits.ifPresentOrElse(
							all -> apply(at, before, all), () -> at.say(EditorMessages.TidySyntax)));
		});
		return null;
	}

	private static void apply(AtCursor at, String before, List<TextEdit> edits) {
		IDocument document = at.edited().document();
		if (edits.isEmpty() || !document.get().equals(before)) {
			return;
		}
		IRewriteTarget target = at.editor().getAdapter(IRewriteTarget.class);
		target.beginCompoundChange();
		try {
			TextChanges.together(edits).apply(document);
		} catch (BadLocationException e) {
			at.say(e.getMessage());
		} finally {
			target.endCompoundChange();
		}
	}
}
