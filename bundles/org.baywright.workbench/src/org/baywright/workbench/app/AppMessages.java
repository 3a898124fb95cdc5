package org.baywright.workbench.app;

import org.eclipse.osgi.util.NLS;

/** Texts of the application, in {@code messages.properties}. */
final class AppMessages extends NLS {

	public static String WindowTitle;
	public static String WorkspaceTitle;
	public static String WorkspaceInUse;
	public static String WorkspaceUnusable;
	public static String Refreshing;
	public static String FileMenu;
	public static String EditMenu;
	public static String RulesMenu;
	public static String ViewMenu;
	public static String HelpMenu;
	public static String NewMenu;
	public static String ShowMenu;

	static {
		NLS.initializeMessages(AppMessages.class.getPackageName() + ".messages", AppMessages.class);
	}

	private AppMessages() {
	}
}
