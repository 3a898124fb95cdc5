package org.baywright.workbench.project;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.baywright.language.workspace.RuleProject;
import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;

import org.eclipse.core.resources.IResourceDelta;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.jobs.ISchedulingRule;

/**
 * Tells the open project which files changed on disk. Reading and proving go on in a job of their own, so that a build
 * never holds the workspace for longer than it takes to note the names.
 */
public final class Builder extends IncrementalProjectBuilder {

	/** The builder's id. */
	public static final String ID = Baywright.ID + ".builder";

	@Override
	protected IProject[] build(int kind, Map<String, String> args, IProgressMonitor monitor) throws CoreException {
		IResourceDelta delta = kind == FULL_BUILD ? null : getDelta(getProject());
		OpenProject open = RuleProjects.of(getProject());
		if (delta == null) {
			open.reloadAll();
		} else {
			List<String> changed = new ArrayList<>();
			delta.accept(part -> {
				boolean isText = part.getKind() != IResourceDelta.CHANGED || (part.getFlags() & IResourceDelta.CONTENT) != 0;
				if (part.getResource() instanceof IFile file && isText && (OpenProject.isRules(file) && !EditedTexts.isEdited(file)
						|| RuleProject.isPicture(OpenProject.path(file)))) {
					changed.add(OpenProject.path(file));
				}
				return true;
			});
			if (!changed.isEmpty()) {
				open.reload(changed);
			}
		}
		return null;
	}

	@Override
	protected void clean(IProgressMonitor monitor) throws CoreException {
		Markers.clear(getProject());
	}

	@Override
	public ISchedulingRule getRule(int kind, Map<String, String> args) {
		return getProject();
	}

}
