package org.baywright.workbench.help;

import org.eclipse.osgi.util.NLS;

/** Texts of the help view, in {@code messages.properties}. */
final class HelpMessages extends NLS {

	public static String Chapter;
	public static String Search;
	public static String Contents;
	public static String Back;
	public static String Page;
	public static String NothingFound;

	static {
		NLS.initializeMessages(HelpMessages.class.getPackageName() + ".messages", HelpMessages.class);
	}

	private HelpMessages() {
	}
}
