package org.baywright.workbench.command;

import org.baywright.workbench.help.Help;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Shows our help on our views and on rules, also in a workbench whose own help knows nothing of them. */
public final class ShowHelp extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		Help.showHere();
		return null;
	}
}
