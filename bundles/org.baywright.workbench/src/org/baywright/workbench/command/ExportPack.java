package org.baywright.workbench.command;

import org.baywright.workbench.wizard.Wizards;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Opens the export of a rule pack. */
public final class ExportPack extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		Wizards.exportPack();
		return null;
	}
}
