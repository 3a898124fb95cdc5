package org.baywright.workbench.command;

import org.baywright.workbench.wizard.Wizards;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Opens the choice of examples. */
public final class ImportExample extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		Wizards.example();
		return null;
	}
}
