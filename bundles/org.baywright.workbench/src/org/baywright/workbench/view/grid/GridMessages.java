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
	public static String Edit;
	public static String EditTitle;
	public static String EditText;
	public static String InRule;
	public static String WillBeWritten;
	public static String Writing;
	public static String Write;
	public static String Apart;
	public static String WithoutTest;
	public static String Limit;
	public static String LimitIn;
	public static String AddLimit;
	public static String RuleAbout;
	public static String RuleSign;
	public static String NoSign;
	public static String RuleFamily;
	public static String EveryFamily;
	public static String RuleBecause;
	public static String RuleAuthor;
	public static String RuleFile;
	public static String Stale;
	public static String NotWritten;
	public static String SayNothing;
	public static String SayNothingAsk;
	public static String SaysNothing;
	public static String ChooseCell;
	public static String Paste;
	public static String Unused;
	public static String PasteText;
	public static String PasteMore;
	public static String PasteNothing;
	public static String PasteEmpty;
	public static String PasteChanges;
	public static String PasteTroubles;
	public static String PasteAdded;

	static {
		NLS.initializeMessages(GridMessages.class.getPackageName() + ".messages", GridMessages.class);
	}

	private GridMessages() {
	}
}
