package org.baywright.workbench.pack;

import org.eclipse.osgi.util.NLS;

/** Texts of this package. */
final class PackMessages extends NLS {

	public static String Title;
	public static String Reading;
	public static String Unreadable;
	public static String SheetTitle;
	public static String NoBrowser;

	static {
		initializeMessages(PackMessages.class.getPackageName() + ".messages", PackMessages.class);
	}

	private PackMessages() {
	}
}
