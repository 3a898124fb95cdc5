package org.baywright.application;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.handlers.HandlerUtil;

/** Puts the views back to where they were at first, if the user agrees. */
public final class PutBack extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) throws ExecutionException {
		IWorkbenchWindow window = HandlerUtil.getActiveWorkbenchWindowChecked(event);
		if (window.getActivePage() != null && MessageDialog.openQuestion(window.getShell(), AppMessages.PutBackTitle, AppMessages.PutBackText)) {
			window.getActivePage().resetPerspective();
		}
		return null;
	}
}
