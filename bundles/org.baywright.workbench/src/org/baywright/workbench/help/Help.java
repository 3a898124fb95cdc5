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
			for (String id : List.of(START, "views", "card", "next-step", "keys", "words")) {
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
		show(id, "");
	}

	private static void show(String id, String heading) {
		IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
		if (window == null || window.getActivePage() == null) {
			return;
		}
		try {
			if (window.getActivePage().showView(HelpView.ID) instanceof HelpView view) {
				view.show(id, heading);
			}
		} catch (PartInitException e) {
			Baywright.log("The help does not open.", e);
		}
	}

	/** Shows the page on what has the keyboard: the flaw at the cursor, or the view. */
	public static void showHere() {
		IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
		IWorkbenchPart part = window == null || window.getActivePage() == null ? null : window.getActivePage().getActivePart();
		if (part instanceof ITextEditor editor) {
			show(HelpAtCursor.page(editor).orElse(HelpBook.LANGUAGE));
		} else if (part instanceof HelpView) {
			// the platform asks twice for one key; by the second time the help has the keyboard
			return;
		} else if (part instanceof ViewPart view) {
			show("views", view.getPartName());
		} else {
			show(START);
		}
	}

	/** Returns the page that a reference of the platform's help means: its last part, without the ending. */
	public static String pageOf(String href) {
		return href.replaceFirst("[?#].*", "").replaceFirst(".*[/:]", "").replaceFirst("\\.(md|html)$", "");
	}
}
