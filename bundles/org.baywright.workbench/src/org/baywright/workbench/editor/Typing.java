package org.baywright.workbench.editor;

import java.util.Optional;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.typing.Typed;
import org.eclipse.jface.text.DocumentCommand;
import org.eclipse.jface.text.IAutoEditStrategy;
import org.eclipse.jface.text.IDocument;

/** Closes what was opened and indents new lines. */
public final class Typing implements IAutoEditStrategy {

	@Override
	public void customizeDocumentCommand(IDocument document, DocumentCommand command) {
		if (command.length != 0 || command.text.isEmpty() || command.text.length() > 2) {
			return;
		}
		Optional<Typed> typed = EditorServices.autoEdit(document.get(), command.offset, command.text);
		typed.ifPresent(does -> {
			command.offset = does.edit().offset();
			command.length = does.edit().length();
			command.text = does.edit().text();
			command.caretOffset = does.caret();
			command.shiftsCaret = false;
			command.doit = true;
		});
	}
}
