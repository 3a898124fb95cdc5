package org.baywright.workbench.command;

import java.nio.file.Path;

import org.baywright.workbench.wizard.FolderOfRules;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;

/** Asks for a folder of rules and makes it a project of the workbench; the folder stays where it is. */
public final class BringIn extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		Shell shell = HandlerUtil.getActiveShell(event);
		DirectoryDialog dialog = new DirectoryDialog(shell, SWT.OPEN);
		dialog.setText(FolderOfRules.title());
		String chosen = dialog.open();
		if (chosen != null) {
			FolderOfRules.bringIn(shell, Path.of(chosen));
		}
		return null;
	}
}
