package org.baywright.workbench.search;

import org.eclipse.osgi.util.NLS;

/** Texts of searches, in {@code messages.properties}. */
final class SearchMessages extends NLS {

	public static String Words;
	public static String Hint;
	public static String About;
	public static String All;
	public static String None;
	public static String Title;
	public static String NoProject;
	public static String Left;

	static {
		NLS.initializeMessages(SearchMessages.class.getPackageName() + ".messages", SearchMessages.class);
	}

	private SearchMessages() {
	}
}
