package org.baywright.workbench.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IEditorLauncher;
import org.eclipse.ui.PlatformUI;

/** Opens the rules to read and print in the program that the system has for web pages. */
public final class SheetLauncher implements IEditorLauncher {

	/**
	 * Writes a page aside and opens it. To be called on the screen's thread.
	 *
	 * @param kind what it is, for the name of its file
	 * @param title what a message is called if that fails
	 * @param failure what it says if the page cannot be written
	 */
	public static void show(Shell shell, String kind, String html, String title, String failure) {
		try {
			Path file = Files.createTempFile("baywright-" + kind + "-", ".html");
			file.toFile().deleteOnExit();
			Files.writeString(file, html);
			launch(shell, IPath.fromPath(file), title);
		} catch (IOException e) {
			ErrorDialog.openError(shell, title, failure, Baywright.error(e.toString(), e));
		}
	}

	/** To be called on the screen's thread. */
	@Override
	public void open(IPath sheet) {
		launch(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), sheet, PackMessages.SheetTitle);
	}

	private static void launch(Shell shell, IPath sheet, String title) {
		if (!Program.launch(sheet.toOSString())) {
			MessageDialog.openInformation(shell, title, NLS.bind(PackMessages.NoBrowser, sheet.toOSString()));
		}
	}
}
