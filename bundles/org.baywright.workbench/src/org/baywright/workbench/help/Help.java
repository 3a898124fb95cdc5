package org.baywright.workbench.help;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

import org.baywright.presenter.help.HelpBook;
import org.baywright.presenter.help.HelpPage;
import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.IPath;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.ViewPart;
import org.eclipse.ui.texteditor.ITextEditor;

/** Opens pages of help. */
public final class Help {

	/** The page to begin with. */
	public static final String START = "start";

	private static HelpBook book;

	private Help() {
	}

	/** Returns all pages. */
	public static synchronized HelpBook book() {
		if (book == null) {
			List<HelpPage> pages = new ArrayList<>();
			for (String id : List.of(START, "views", "keys")) {
				pages.add(HelpPage.of(id, HelpMessages.Chapter, read("help/" + id + ".md")));
			}
			book = new HelpBook(pages);
		}
		return book;
	}

	private static String read(String path) {
		try (InputStream in = FileLocator.openStream(Baywright.instance().getBundle(), IPath.fromPortableString(path), false)) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		} catch (IOException e) {
			Baywright.log("The help page " + path + " cannot be read.", e);
			return "";
		}
	}

	/**
	 * Shows a page beside the editor.
	 *
	 * @param id a page's id, such as that of a check; an unknown one shows the first page
	 */
	public static void show(String id) {
		IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
		if (window == null || window.getActivePage() == null) {
			return;
		}
		try {
			if (window.getActivePage().showView(HelpView.ID) instanceof HelpView view) {
				view.show(id);
			}
		} catch (PartInitException e) {
			Baywright.log("The help does not open.", e);
		}
	}

	/** Shows the page on what has the keyboard: the finding at the cursor, or the view. */
	public static void showHere() {
		IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
		IWorkbenchPart part = window == null || window.getActivePage() == null ? null : window.getActivePage().getActivePart();
		show(part instanceof ITextEditor editor ? HelpAtCursor.page(editor).orElse(HelpBook.LANGUAGE)
				: part instanceof ViewPart ? "views" : START);
	}

	/** Returns the page that a reference of the platform's help means: its last part, without the ending. */
	public static String pageOf(String href) {
		return href.replaceFirst("[?#].*", "").replaceFirst(".*[/:]", "").replaceFirst("\\.(md|html)$", "");
	}
}
