package org.baywright.application;

import java.io.IOException;
import java.net.URL;
import java.nio.file.Path;

import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.Platform;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.service.datalocation.Location;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;

/** Starts the workbench on a workspace that no other one has open. */
public final class Application implements IApplication {

	/** Exit code of a workbench that cannot have its workspace. */
	private static final Integer EXIT_UNUSABLE = 1;

	@Override
	public Object start(IApplicationContext context) throws Exception {
		Display display = PlatformUI.createDisplay();
		try {
			if (!lockWorkspace()) {
				return EXIT_UNUSABLE;
			}
			int result = PlatformUI.createAndRunWorkbench(display, new Advisor());
			return result == PlatformUI.RETURN_RESTART ? EXIT_RESTART : EXIT_OK;
		} finally {
			Platform.getInstanceLocation().release();
			display.dispose();
		}
	}

	private static boolean lockWorkspace() {
		Location location = Platform.getInstanceLocation();
		try {
			if (!location.isSet()) {
				URL usual = Path.of(System.getProperty("user.home"), "baywright-workspace").toUri().toURL();
				return location.set(usual, true);
			}
			if (location.lock()) {
				return true;
			}
			MessageDialog.openError(null, AppMessages.WorkspaceTitle,
					NLS.bind(AppMessages.WorkspaceInUse, location.getURL().getPath()));
		} catch (IOException | IllegalStateException e) {
			Baywright.log("The workspace cannot be locked.", e);
			MessageDialog.openError(null, AppMessages.WorkspaceTitle,
					NLS.bind(AppMessages.WorkspaceUnusable, location.getURL(), e.getMessage()));
		}
		return false;
	}

	@Override
	public void stop() {
		if (PlatformUI.isWorkbenchRunning()) {
			PlatformUI.getWorkbench().getDisplay().syncExec(() -> PlatformUI.getWorkbench().close());
		}
	}
}
