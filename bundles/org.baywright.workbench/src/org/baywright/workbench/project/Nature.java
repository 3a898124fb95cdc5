package org.baywright.workbench.project;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.ICommand;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IProjectNature;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;

/** Marks a project of the workspace as one that holds rules, so that its files are checked whenever they change. */
public final class Nature implements IProjectNature {

	/** The nature's id. */
	public static final String ID = Baywright.ID + ".nature";

	private IProject project;

	@Override
	public void configure() throws CoreException {
		IProjectDescription description = project.getDescription();
		List<ICommand> commands = new ArrayList<>(Arrays.asList(description.getBuildSpec()));
		if (commands.stream().noneMatch(command -> command.getBuilderName().equals(Builder.ID))) {
			ICommand command = description.newCommand();
			command.setBuilderName(Builder.ID);
			commands.add(command);
			description.setBuildSpec(commands.toArray(ICommand[]::new));
			project.setDescription(description, null);
		}
	}

	@Override
	public void deconfigure() throws CoreException {
		IProjectDescription description = project.getDescription();
		description.setBuildSpec(Arrays.stream(description.getBuildSpec())
				.filter(command -> !command.getBuilderName().equals(Builder.ID)).toArray(ICommand[]::new));
		project.setDescription(description, null);
		Markers.clear(project);
	}

	@Override
	public IProject getProject() {
		return project;
	}

	@Override
	public void setProject(IProject of) {
		project = of;
	}

	/** Returns whether a project is open and holds rules. */
	public static boolean isOn(IProject project) {
		try {
			return project.isAccessible() && project.hasNature(ID);
		} catch (CoreException e) {
			return false;
		}
	}

	/**
	 * Makes a project one that holds rules; one that is already stays as it is.
	 *
	 * @throws CoreException if the project's description cannot be written
	 */
	public static void add(IProject project, IProgressMonitor monitor) throws CoreException {
		if (!project.hasNature(ID)) {
			IProjectDescription description = project.getDescription();
			List<String> natures = new ArrayList<>(List.of(description.getNatureIds()));
			natures.add(0, ID);
			description.setNatureIds(natures.toArray(String[]::new));
			project.setDescription(description, monitor);
		}
	}
}
