package org.baywright.workbench.editor;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Use;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.ltk.core.refactoring.participants.ProcessorBasedRefactoring;
import org.eclipse.ltk.ui.refactoring.RefactoringWizard;
import org.eclipse.ltk.ui.refactoring.RefactoringWizardOpenOperation;
import org.eclipse.swt.widgets.Shell;

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
		if (!open(at.editor().getSite().getShell(), at.edited(), name)) {
			at.say(EditorMessages.RenameNothing);
		}
	}

	/** Asks for the new name of what is named somewhere; returns whether it is still there. */
	public static boolean open(Shell shell, EditedFile edited, Use name) {
		try {
			String old = edited.document().get(name.offset(), name.length());
			RenameProcessor processor = new RenameProcessor(edited, name.offset(), old);
			RefactoringWizard wizard = new RenameWizard(new ProcessorBasedRefactoring(processor), processor, old);
			new RefactoringWizardOpenOperation(wizard).run(shell, EditorMessages.RenameTitle);
			return true;
		} catch (BadLocationException e) {
			return false;
		} catch (InterruptedException e) {
			// the user went away
			return true;
		}
	}
}
