package org.baywright.workbench.wizard;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

import org.baywright.pack.PackWriter;
import org.baywright.pack.WholeFile;
import org.baywright.pack.manifest.PackException;
import org.baywright.presenter.packing.PackCheck;
import org.baywright.presenter.Say;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.pack.PackLauncher;
import org.baywright.workbench.pack.SheetLauncher;
import org.baywright.workbench.project.LiveState.Checked;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IExportWizard;
import org.eclipse.ui.IWorkbench;

/** Writes a project's rule pack, or lists what blocks it. */
public final class PackWizard extends Wizard implements IExportWizard {

	private Optional<Target> target = Optional.empty();
	private PackPage page;

	@Override
	public void init(IWorkbench workbench, IStructuredSelection selection) {
		target = Target.of(workbench.getActiveWorkbenchWindow(), selection);
		setWindowTitle(WizardMessages.PackTitle);
		setNeedsProgressMonitor(true);
	}

	@Override
	public void addPages() {
		page = new PackPage(target);
		addPage(page);
	}

	@Override
	public boolean performFinish() {
		Checked checked = page.checked();
		Path file = page.file();
		boolean sheet = page.withSheet();
		boolean draft = page.isDraft();
		PackWriter.Made[] made = new PackWriter.Made[1];
		try {
			getContainer().run(true, true, monitor -> {
				SubMonitor progress = SubMonitor.convert(monitor, WizardMessages.PackTitle, 4);
				try {
					made[0] = PackCheck.make(page.folder(), checked.snapshot().rules(), checked.report(), checked.snapshot().problems(), draft);
					progress.worked(2);
					progress.checkCanceled();
					WholeFile.write(file, made[0].bytes());
					progress.worked(1);
					if (sheet) {
						WholeFile.write(sheetOf(file), made[0].pack().sheet().getBytes(StandardCharsets.UTF_8));
					}
				} catch (PackException | IOException e) {
					throw new InvocationTargetException(e);
				}
			});
		} catch (InvocationTargetException e) {
			ErrorDialog.openError(getShell(), WizardMessages.PackTitle, WizardMessages.PackFailed,
					Baywright.error(e.getCause().getMessage(), e.getCause()));
			return false;
		} catch (InterruptedException e) {
			return false;
		}
		refresh();
		String told = NLS.bind(WizardMessages.PackWritten, new Object[] { sheet ? file + "\n" + sheetOf(file) : file,
				Say.count(checked.snapshot().rules().rules().size(), "rule"), jobs(made[0].pack().manifest().cases()),
				made[0].pack().manifest().flaws().size(), made[0].pack().manifest().fingerprint() });
		String[] buttons = sheet ? new String[] { IDialogConstants.OK_LABEL, WizardMessages.PackShow, WizardMessages.PackOpenSheet }
				: new String[] { IDialogConstants.OK_LABEL, WizardMessages.PackShow };
		int answer = MessageDialog.open(MessageDialog.INFORMATION, getShell(), WizardMessages.PackTitle, told, SWT.NONE, buttons);
		// when the wizard is closed
		Display.getCurrent().asyncExec(() -> {
			if (answer == 1) {
				new PackLauncher().open(IPath.fromPath(file));
			} else if (answer == 2) {
				new SheetLauncher().open(IPath.fromPath(sheetOf(file)));
			}
		});
		return true;
	}

	private static Path sheetOf(Path pack) {
		return pack.resolveSibling(pack.getFileName().toString().replaceFirst("\\.baypack$", "") + ".html");
	}

	/** A pack within the project shall show in the project tree. */
	private void refresh() {
		target.ifPresent(to -> {
			ICoreRunnable look = monitor -> to.project().refreshLocal(IResource.DEPTH_INFINITE, monitor);
			Job.createSystem(WizardMessages.PackTitle, look).schedule();
		});
	}

	private static String jobs(int jobs) {
		return jobs == 0 ? WizardMessages.PackNoJobs : NLS.bind(WizardMessages.PackJobs, Say.count(jobs, "finished job"));
	}
}
