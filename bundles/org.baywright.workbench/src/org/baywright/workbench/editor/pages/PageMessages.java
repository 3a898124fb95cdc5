package org.baywright.workbench.editor.pages;

import org.eclipse.osgi.util.NLS;

/** Texts of the editor's pages, in {@code messages.properties}. */
final class PageMessages extends NLS {

	public static String ConflictTitle;
	public static String ConflictText;
	public static String ConflictLeave;
	public static String ConflictWrite;
	public static String FullTitle;
	public static String FullText;
	public static String ChangedTitle;
	public static String ChangedText;
	public static String ChangedKeep;
	public static String ChangedReplace;
	public static String ChangedFailed;
	public static String GoneTitle;
	public static String GoneText;
	public static String GoneKeep;
	public static String GoneSave;
	public static String GoneClose;
	public static String GoneFailed;
	public static String RefusedTitle;
	public static String Refused;
	public static String Begun;
	public static String BegunKeep;
	public static String BegunClose;
	public static String TextPage;
	public static String CardPage;

	static {
		NLS.initializeMessages(PageMessages.class.getPackageName() + ".messages", PageMessages.class);
	}

	private PageMessages() {
	}
}
