package org.baywright.workbench.view.grid;

import org.eclipse.osgi.util.NLS;

/** Texts of the grid, in {@code messages.properties}. */
final class GridMessages extends NLS {

	public static String Empty;
	public static String Order;
	public static String ByCost;
	public static String ByTime;
	public static String ByTitle;
	public static String Copy;
	public static String Copied;
	public static String Save;
	public static String Making;
	public static String Seen;
	public static String Unsplit;
	public static String Name;

	static {
		NLS.initializeMessages(GridMessages.class.getPackageName() + ".messages", GridMessages.class);
	}

	private GridMessages() {
	}
}
