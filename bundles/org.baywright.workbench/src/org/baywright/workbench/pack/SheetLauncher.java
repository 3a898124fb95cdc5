package org.baywright.workbench.pack;

import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.program.Program;
import org.eclipse.ui.IEditorLauncher;
import org.eclipse.ui.PlatformUI;

/** Opens the rules to read and print in the program that the system has for web pages. */
public final class SheetLauncher implements IEditorLauncher {

	/** To be called on the screen's thread. */
	@Override
	public void open(IPath sheet) {
		if (!Program.launch(sheet.toOSString())) {
			MessageDialog.openInformation(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), PackMessages.SheetTitle,
					NLS.bind(PackMessages.NoBrowser, sheet.toOSString()));
		}
	}
}
