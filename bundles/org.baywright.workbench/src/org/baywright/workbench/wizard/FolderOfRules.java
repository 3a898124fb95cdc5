package org.baywright.workbench.wizard;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.baywright.language.workspace.RuleProject;
import org.baywright.presenter.draft.RuleFolders;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.Nature;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IWorkspaceRoot;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;

/** Makes a folder of rule files a project of the workbench; the files stay where they are. */
public final class FolderOfRules {

	private FolderOfRules() {
	}

	/** Asks for a folder and brings it in. To be called on the screen's thread. */
	public static void choose(Shell shell) {
		DirectoryDialog dialog = new DirectoryDialog(shell, SWT.OPEN);
		dialog.setText(WizardMessages.FolderTitle);
		String chosen = dialog.open();
		if (chosen != null) {
			bringIn(shell, Path.of(chosen));
		}
	}

	/**
	 * Brings a folder in, in the background, and shows its first file; says so if it is no folder or holds no rules, and asks
	 * if it holds several folders of rules. To be called on the screen's thread.
	 */
	public static void bringIn(Shell shell, Path folder) {
		if (!Files.isDirectory(folder)) {
			tell(shell, NLS.bind(WizardMessages.FolderIsFile, folder.getFileName()));
			return;
		}
		if (ResourcesPlugin.getWorkspace().getRoot().getLocation().toPath().startsWith(folder)) {
			tell(shell, NLS.bind(WizardMessages.FolderIsWorkspace, folder));
			return;
		}
		Job.create(NLS.bind(WizardMessages.FolderReading, folder), (IProgressMonitor monitor) -> {
			try {
				List<String> files = RuleProject.filesIn(folder);
				if (files.isEmpty()) {
					return tell(shell, NLS.bind(WizardMessages.FolderEmpty, folder));
				}
				shell.getDisplay().asyncExec(() -> ask(shell, folder, RuleFolders.of(files)));
				return Status.OK_STATUS;
			} catch (IOException e) {
				return failed(shell, folder, e);
			}
		}).schedule();
	}

	private static void ask(Shell shell, Path folder, List<String> parts) {
		int answer = parts.isEmpty() ? 1
				: MessageDialog.open(MessageDialog.QUESTION, shell, WizardMessages.FolderTitle,
						NLS.bind(WizardMessages.FolderSeveral, folder, String.join("\n", parts)), SWT.NONE, WizardMessages.FolderEach,
						WizardMessages.FolderAsOne, IDialogConstants.CANCEL_LABEL);
		if (answer == 0) {
			make(shell, parts.stream().map(folder::resolve).toList());
		} else if (answer == 1) {
			make(shell, List.of(folder));
		}
	}

	private static void make(Shell shell, List<Path> folders) {
		Optional<String> overlap = folders.stream().flatMap(folder -> overlap(folder).stream()).findFirst();
		if (overlap.isPresent()) {
			tell(shell, overlap.get());
			return;
		}
		Job job = Job.create(NLS.bind(WizardMessages.FolderReading, folders.get(0)), (IProgressMonitor monitor) -> {
			SubMonitor progress = SubMonitor.convert(monitor, folders.size());
			IProject first = null;
			for (Path folder : folders) {
				try {
					IProject project = make(folder, progress.split(1));
					first = first == null ? project : first;
				} catch (CoreException e) {
					return failed(shell, folder, e);
				}
			}
			ProjectMaker.remember();
			IProject shown = first;
			try {
				String file = RuleProject.filesIn(folders.get(0)).get(0);
				shell.getDisplay().asyncExec(() -> ProjectMaker.show(window(shell), shown, file));
			} catch (IOException e) {
				return failed(shell, folders.get(0), e);
			}
			return Status.OK_STATUS;
		});
		job.setUser(true);
		job.schedule();
	}

	/** The window that the folder was brought into; the one in front, where it was a dialog. */
	private static IWorkbenchWindow window(Shell shell) {
		return Arrays.stream(PlatformUI.getWorkbench().getWorkbenchWindows()).filter(window -> window.getShell() == shell).findFirst()
				.orElseGet(PlatformUI.getWorkbench()::getActiveWorkbenchWindow);
	}

	private static IStatus failed(Shell shell, Path folder, Exception e) {
		String message = NLS.bind(WizardMessages.FolderFailed, folder, e.getMessage());
		Baywright.log(message, e);
		return tell(shell, message);
	}

	/** Returns why a folder in or around one that is here already is not brought in: its rules would count twice. */
	private static Optional<String> overlap(Path folder) {
		Path wanted = real(folder);
		for (IProject known : ResourcesPlugin.getWorkspace().getRoot().getProjects()) {
			Path place = known.getLocation() == null ? null : real(known.getLocation().toPath());
			if (place != null && !place.equals(wanted) && (wanted.startsWith(place) || place.startsWith(wanted))) {
				return Optional.of(NLS.bind(wanted.startsWith(place) ? WizardMessages.FolderWithin : WizardMessages.FolderAround, folder, known.getName()));
			}
		}
		return Optional.empty();
	}

	/** The place behind links. */
	private static Path real(Path path) {
		try {
			return path.toRealPath();
		} catch (IOException e) {
			return path; // it is gone, or may not be looked at
		}
	}

	private static IStatus tell(Shell shell, String message) {
		shell.getDisplay().asyncExec(() -> MessageDialog.openError(shell, WizardMessages.FolderTitle, message));
		return Status.OK_STATUS;
	}

	/** One that is in the workbench already is shown as it is. */
	private static IProject make(Path folder, IProgressMonitor monitor) throws CoreException {
		IWorkspaceRoot root = ResourcesPlugin.getWorkspace().getRoot();
		Path wanted = real(folder);
		for (IProject known : root.getProjects()) {
			if (known.getLocation() != null && real(known.getLocation().toPath()).equals(wanted)) {
				known.open(monitor);
				Nature.add(known, monitor);
				return known;
			}
		}
		String name = folder.getFileName() == null ? "rules" : folder.getFileName().toString();
		IProject project = root.getProject(name);
		for (int number = 2; project.exists(); number++) {
			project = root.getProject(name + " " + number);
		}
		IProjectDescription description = ResourcesPlugin.getWorkspace().newProjectDescription(project.getName());
		// a folder of the workspace itself has its place by its name
		if (!folder.equals(root.getLocation().append(name).toPath())) {
			description.setLocation(IPath.fromPath(folder));
		}
		project.create(description, monitor);
		try {
			project.open(monitor);
			Nature.add(project, monitor);
		} catch (CoreException | RuntimeException e) {
			// the files stay: they were there before
			project.delete(false, true, null);
			throw e;
		}
		return project;
	}
}
