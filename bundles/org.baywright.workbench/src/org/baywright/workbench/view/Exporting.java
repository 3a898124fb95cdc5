package org.baywright.workbench.view;

import java.io.IOException;
import java.nio.file.Path;

import org.baywright.presenter.Export;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;

/** Hands what a view shows to a file or to the clipboard. */
public final class Exporting {

	private Exporting() {
	}

	/**
	 * Asks for a file and writes it.
	 *
	 * @param name the name that is proposed, without the ending
	 * @param ending the ending, without the dot
	 */
	public static void toFile(Shell shell, String name, String ending, String content) {
		FileDialog dialog = new FileDialog(shell, SWT.SAVE);
		dialog.setOverwrite(true);
		dialog.setFileName(name.replaceAll("[^\\w .-]+", "") + "." + ending);
		dialog.setFilterExtensions(new String[] { "*." + ending });
		String chosen = dialog.open();
		if (chosen == null) {
			return;
		}
		try {
			Export.text(Path.of(chosen), content);
		} catch (IOException e) {
			MessageDialog.openError(shell, ViewMessages.NotWritten, NLS.bind(ViewMessages.NotWrittenBecause, chosen, e.getMessage()));
		}
	}

	/** Puts a text on the clipboard. */
	public static void toClipboard(Display display, String content) {
		if (content.isEmpty()) {
			return; // the clipboard refuses it
		}
		Clipboard clipboard = new Clipboard(display);
		clipboard.setContents(new Object[] { content }, new Transfer[] { TextTransfer.getInstance() });
		clipboard.dispose();
	}

	/** Returns the text on the clipboard; the empty text if there is none. */
	public static String fromClipboard(Display display) {
		Clipboard clipboard = new Clipboard(display);
		Object content = clipboard.getContents(TextTransfer.getInstance());
		clipboard.dispose();
		return content instanceof String text ? text : "";
	}
}
