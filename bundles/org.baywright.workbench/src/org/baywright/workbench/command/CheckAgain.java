package org.baywright.workbench.command;

import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Reads the project in front again from disk and checks all of it. */
public final class CheckAgain extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		ActiveProject.get().project().ifPresent(OpenProject::reloadAll);
		return null;
	}
}
