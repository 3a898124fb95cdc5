package org.baywright.workbench.project;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.ResourcesPlugin;

/** The rule projects that somebody asked for since the workbench started. */
public final class RuleProjects {

	private static final Map<IProject, OpenProject> OPEN = new ConcurrentHashMap<>();

	static {
		ResourcesPlugin.getWorkspace().addResourceChangeListener(RuleProjects::forget,
				IResourceChangeEvent.PRE_CLOSE | IResourceChangeEvent.PRE_DELETE);
	}

	private RuleProjects() {
	}

	/** Returns a project, and begins to read it if this is the first time that somebody asks. */
	public static OpenProject of(IProject project) {
		return OPEN.computeIfAbsent(project, OpenProject::new);
	}

	/** Returns the project that a rule file belongs to; nothing for other files. */
	public static Optional<OpenProject> of(IFile file) {
		return OpenProject.isRules(file) && file.getProject().isAccessible() ? Optional.of(of(file.getProject()))
				: Optional.empty();
	}

	/** Makes the next one who asks read the project anew. */
	static void forget(OpenProject open) {
		OPEN.remove(open.project(), open);
	}

	private static void forget(IResourceChangeEvent event) {
		if (event.getResource() instanceof IProject project) {
			OpenProject gone = OPEN.remove(project);
			if (gone != null) {
				gone.close();
			}
		}
	}
}
