package org.baywright.workbench.editor;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Use;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.ltk.core.refactoring.participants.ProcessorBasedRefactoring;
import org.eclipse.ltk.ui.refactoring.RefactoringWizard;
import org.eclipse.ltk.ui.refactoring.RefactoringWizardOpenOperation;

/** Renames the thing at the cursor in all files, with a preview. */
public final class RenameName extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		AtCursor.of(event).ifPresent(at -> Ask.then(EditorMessages.RenameTitle, at.edited(),
				(EditorServices services, String path) -> services.prepareRename(path, at.selection().getOffset()),
				name -> name.ifPresentOrElse(use -> open(at, use), () -> at.say(EditorMessages.RenameNothing))));
		return null;
	}

	private static void open(AtCursor at, Use name) {
		try {
			String old = at.edited().document().get(name.offset(), name.length());
			RenameProcessor processor = new RenameProcessor(at.edited(), name.offset(), old);
			RefactoringWizard wizard = new RenameWizard(new ProcessorBasedRefactoring(processor), processor, old);
			new RefactoringWizardOpenOperation(wizard).run(at.editor().getSite().getShell(), EditorMessages.RenameTitle);
		} catch (BadLocationException e) {
			at.say(EditorMessages.RenameNothing);
		} catch (InterruptedException e) {
			// the user went away
		}
	}
}
