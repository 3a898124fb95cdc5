package org.baywright.workbench.pack;

import java.io.IOException;

import org.baywright.pack.PackReader;
import org.baywright.pack.PackText;
import org.baywright.pack.manifest.PackException;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.Icon;
import org.baywright.workbench.TextInput;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.ui.IEditorLauncher;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;

/** Shows in words what a rule pack holds, as the command {@code show} does, in an editor that cannot write. */
public final class PackLauncher implements IEditorLauncher {

	/** The platform's editor of texts, without its tools for programmers. */
	private static final String EDITOR = Baywright.ID + ".packText";

	/** To be called on the screen's thread. */
	@Override
	public void open(IPath pack) {
		IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
		ICoreRunnable read = monitor -> {
			String text;
			try {
				text = PackText.of(PackReader.read(pack.toPath()), true);
			} catch (IOException | PackException e) {
				window.getShell().getDisplay().asyncExec(() -> MessageDialog.openError(window.getShell(), PackMessages.Title,
						NLS.bind(PackMessages.Unreadable, pack.toOSString(), e.getMessage())));
				return;
			}
			// the same pack is the same input
			TextInput input = new TextInput(pack.lastSegment(), pack.toOSString(), Icon.PACK, text, pack);
			window.getShell().getDisplay().asyncExec(() -> show(window.getActivePage(), input));
		};
		Job job = Job.create(NLS.bind(PackMessages.Reading, pack.lastSegment()), read);
		job.setUser(true);
		job.schedule();
	}

	private static void show(IWorkbenchPage page, TextInput input) {
		try {
			// it may have been written anew since
			IEditorPart before = page.findEditor(input);
			if (before != null) {
				page.closeEditor(before, false);
			}
			page.openEditor(input, EDITOR);
		} catch (PartInitException e) {
			Baywright.log("What " + input.getName() + " holds cannot be shown.", e);
		}
	}
}
