package org.baywright.application;

import java.net.URL;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.RulesPerspective;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.IAdaptable;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.application.IWorkbenchConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchAdvisor;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;
import org.eclipse.ui.ide.IDE;
import org.osgi.framework.Bundle;

/** Sets the workbench up: what it keeps between runs, and that the workspace is saved when it closes. */
final class Advisor extends WorkbenchAdvisor {

	@Override
	public String getInitialWindowPerspectiveId() {
		return RulesPerspective.ID;
	}

	@Override
	public void initialize(IWorkbenchConfigurer configurer) {
		configurer.setSaveAndRestore(true);
		configurer.setExitOnLastWindowClose(true);
		PlainMenus.install(Display.getCurrent());
		IDE.registerAdapters();
		// the images that the platform's project tree asks for; its own application would declare them
		declare(configurer, IDE.SharedImages.IMG_OBJ_PROJECT, "prj_obj.png");
		declare(configurer, IDE.SharedImages.IMG_OBJ_PROJECT_CLOSED, "cprj_obj.png");
	}

	private static void declare(IWorkbenchConfigurer configurer, String id, String file) {
		Bundle bundle = Platform.getBundle("org.eclipse.ui.ide");
		URL url = bundle == null ? null : FileLocator.find(bundle, IPath.fromOSString("icons/full/obj16/" + file), null);
		configurer.declareImage(id, ImageDescriptor.createFromURL(url), true);
	}

	/**
	 * Opens the windows on the screen's thread. The platform does it on another one and waits for its signal, which
	 * sometimes comes five seconds late.
	 */
	@Override
	public boolean openWindows() {
		IWorkbenchConfigurer configurer = getWorkbenchConfigurer();
		IStatus restored = configurer.restoreState();
		if (restored.getCode() == IWorkbenchConfigurer.RESTORE_CODE_EXIT) {
			return false;
		}
		if (!restored.isOK() && restored.getCode() == IWorkbenchConfigurer.RESTORE_CODE_RESET) {
			try {
				configurer.openFirstTimeWindow();
			} catch (RuntimeException e) {
				Baywright.log("No window could be opened.", e);
				return false;
			}
		}
		return true;
	}

	@Override
	public IAdaptable getDefaultPageInput() {
		return ResourcesPlugin.getWorkspace().getRoot();
	}

	@Override
	public WorkbenchWindowAdvisor createWorkbenchWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
		return new WindowAdvisor(configurer);
	}

	@Override
	public void postStartup() {
		Job refresh = Job.create(AppMessages.Refreshing, (IProgressMonitor monitor) -> {
			try {
				ResourcesPlugin.getWorkspace().getRoot().refreshLocal(IResource.DEPTH_INFINITE, monitor);
			} catch (CoreException e) {
				return e.getStatus();
			}
			return Status.OK_STATUS;
		});
		refresh.setRule(ResourcesPlugin.getWorkspace().getRoot());
		refresh.schedule();
	}

	@Override
	public boolean preShutdown() {
		Job.getJobManager().cancel(Baywright.ID);
		return super.preShutdown();
	}

	@Override
	public void postShutdown() {
		try {
			IStatus saved = ResourcesPlugin.getWorkspace().save(true, null);
			if (!saved.isOK()) {
				Platform.getLog(Advisor.class).log(saved);
			}
		} catch (CoreException e) {
			Baywright.log("The workspace could not be saved.", e);
		}
	}
}
