package org.baywright.workbench.command;

import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.Nature;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.handlers.HandlerUtil;

/** Reads the project that is chosen in the tree, else the one in front, again from disk and checks all of it. */
public final class CheckAgain extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) throws ExecutionException {
		ActiveProject active = ActiveProject.of(HandlerUtil.getActiveWorkbenchWindowChecked(event));
		IResource chosen = HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection several
				? Adapters.adapt(several.getFirstElement(), IResource.class)
				: null;
		if (chosen != null && chosen.getProject() != null && Nature.isOn(chosen.getProject())) {
			active.activate(chosen.getProject());
		}
		// one whose reading was stopped is another one from now on
		active.project().map(OpenProject::project).ifPresent(active::activate);
		active.project().ifPresent(OpenProject::reloadAll);
		return null;
	}
}
