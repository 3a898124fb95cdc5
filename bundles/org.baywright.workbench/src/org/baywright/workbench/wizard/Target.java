package org.baywright.workbench.wizard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.language.workspace.Snapshot;
import org.baywright.model.RuleBase;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.LiveState;
import org.baywright.workbench.project.Nature;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.RuleProjects;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchWindow;

/**
 * Where a wizard writes to.
 *
 * @param project the rule project
 * @param file the rule file that is selected or in front, if one is
 * @param folder the folder that is selected, or the project itself
 */
record Target(IProject project, Optional<IFile> file, IContainer folder) {

	/** Finds the target: what is selected, else what is in front in the window. */
	static Optional<Target> of(IWorkbenchWindow window, IStructuredSelection selection) {
		IResource selected = Adapters.adapt(selection.getFirstElement(), IResource.class);
		if (selected != null && Nature.isOn(selected.getProject())) {
			return Optional.of(of(selected));
		}
		IEditorPart editor = window.getActivePage().getActiveEditor();
		IFile front = editor == null ? null : Adapters.adapt(editor.getEditorInput(), IFile.class);
		if (front != null && Nature.isOn(front.getProject())) {
			return Optional.of(of(front));
		}
		return ActiveProject.of(window).project().map(OpenProject::project).map(project -> new Target(project, Optional.empty(), project));
	}

	private static Target of(IResource selected) {
		if (selected instanceof IFile file) {
			return new Target(file.getProject(), Optional.of(file).filter(OpenProject::isRules), file.getParent());
		}
		return new Target(selected.getProject(), Optional.empty(), (IContainer) selected);
	}

	/** Returns the rules of the project as far as they are read. */
	RuleBase rules() {
		return RuleProjects.of(project).state().texts().map(Snapshot::rules).orElseGet(() -> new RuleBase.Builder(project.getName()).build());
	}

	/** Returns what is known of the project. */
	LiveState state() {
		return RuleProjects.of(project).state();
	}

	/** Returns the rule files of the project, sorted by path. */
	List<String> files() {
		List<String> found = new ArrayList<>();
		try {
			project.accept(resource -> {
				if (resource instanceof IFile some && OpenProject.isRules(some)) {
					found.add(some.getProjectRelativePath().toPortableString());
				}
				return true;
			});
		} catch (CoreException e) {
			Baywright.log("The files of " + project.getName() + " cannot be listed.", e);
		}
		found.sort(null);
		return found;
	}

	/** Makes a field to choose or name a file of the project, in a parent of two columns. */
	Combo fileField(Composite parent, String otherwise) {
		FamilyFields.label(parent, WizardMessages.File);
		Combo combo = new Combo(parent, SWT.DROP_DOWN);
		combo.setItems(files().toArray(String[]::new));
		combo.setText(file.map(some -> some.getProjectRelativePath().toPortableString()).orElse(otherwise));
		GridDataFactory.fillDefaults().grab(true, false).applyTo(combo);
		return combo;
	}
}
