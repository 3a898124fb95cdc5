package org.baywright.workbench.install;

import java.util.ArrayList;
import java.util.List;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.LiveState;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.RuleMarkers;
import org.baywright.workbench.project.RuleProjects;
import org.baywright.workbench.wizard.Examples;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IConfigurationElement;
import org.eclipse.core.runtime.IExtension;
import org.eclipse.core.runtime.Platform;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;

/**
 * Tells whether an installation works, without a window: every class that the workbench contributes can be loaded, and
 * each example is checked. Ends with 0 if all is well; what is not is printed.
 */
public final class SelfCheck implements IApplication {

	private final List<String> wrong = new ArrayList<>();

	@Override
	public Object start(IApplicationContext context) throws Exception {
		int classes = 0;
		for (IExtension extension : Platform.getExtensionRegistry().getExtensions(Baywright.ID)) {
			for (IConfigurationElement element : extension.getConfigurationElements()) {
				classes += load(element);
			}
		}
		for (Examples.Example example : Examples.ALL) {
			check(example.id());
		}
		ResourcesPlugin.getWorkspace().save(true, null);
		wrong.forEach(System.out::println);
		System.out.println(wrong.isEmpty() ? "Baywright works: " + classes + " contributions load, " + Examples.ALL.size() + " examples are checked."
				: "Baywright does not work here.");
		return wrong.isEmpty() ? EXIT_OK : Integer.valueOf(1);
	}

	private int load(IConfigurationElement element) {
		int loaded = 0;
		for (String attribute : new String[] { "class", "defaultHandler" }) {
			String name = element.getAttribute(attribute);
			if (name != null && name.startsWith(Baywright.ID)) {
				try {
					Baywright.instance().getBundle().loadClass(name);
					loaded++;
				} catch (ClassNotFoundException | LinkageError e) {
					wrong.add(name + " cannot be loaded: " + e);
				}
			}
		}
		for (IConfigurationElement child : element.getChildren()) {
			loaded += load(child);
		}
		return loaded;
	}

	private void check(String example) throws Exception {
		IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(example);
		if (project.exists()) {
			project.delete(true, true, null);
		}
		ProjectMaker.make(example, Examples.files(example), Examples.pictures(example), null);
		OpenProject open = RuleProjects.of(project);
		for (int i = 0; i < 600 && !open.state().isFresh(); i++) {
			Thread.sleep(100);
		}
		LiveState state = open.state();
		if (!state.isFresh()) {
			wrong.add(example + " was not checked in time.");
			return;
		}
		int rules = state.texts().orElseThrow().rules().rules().size();
		System.out.println(example + ": " + rules + " rules, " + marks(project) + " marks");
		if (rules == 0 || state.texts().orElseThrow().hasErrors()) {
			wrong.add(example + " was not read.");
		}
	}

	private static int marks(IProject project) throws CoreException {
		return project.findMarkers(RuleMarkers.BOTH, true, IResource.DEPTH_INFINITE).length;
	}

	@Override
	public void stop() {
		// ends by itself
	}
}
