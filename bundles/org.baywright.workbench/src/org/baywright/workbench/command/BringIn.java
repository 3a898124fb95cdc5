package org.baywright.workbench.command;

import org.baywright.workbench.wizard.FolderOfRules;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.handlers.HandlerUtil;

/** Asks for a folder of rules and makes it a project of the workbench; the folder stays where it is. */
public final class BringIn extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		FolderOfRules.choose(HandlerUtil.getActiveShell(event));
		return null;
	}
}
