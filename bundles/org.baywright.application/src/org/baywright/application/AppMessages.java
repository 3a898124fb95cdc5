package org.baywright.application;

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
	public static String ViewMenu;
	public static String PutBackTitle;
	public static String PutBackText;
	public static String HelpMenu;
	public static String NewMenu;
	public static String ShowMenu;
	public static String WelcomeTitle;
	public static String WelcomeText;
	public static String WelcomeWalk;
	public static String WelcomeWalkText;
	public static String WelcomeProject;
	public static String WelcomeProjectText;
	public static String WelcomeExample;
	public static String WelcomeExampleText;
	public static String WelcomeHelp;
	public static String WelcomeHelpText;
	public static String WelcomeClose;
	public static String WelcomeCloseText;
	public static String WelcomeSafety;
	public static String AboutTitle;
	public static String AboutRelease;
	public static String AboutSafety;
	public static String AboutText;
	public static String AboutNoNotice;
	public static String EmptyTree;
	public static String EmptyTreeBringIn;

	static {
		NLS.initializeMessages(AppMessages.class.getPackageName() + ".messages", AppMessages.class);
	}

	private AppMessages() {
	}
}
