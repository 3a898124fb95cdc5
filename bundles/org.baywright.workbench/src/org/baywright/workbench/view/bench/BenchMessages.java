package org.baywright.workbench.view.bench;

import org.eclipse.osgi.util.NLS;

/** Texts of the bench. */
final class BenchMessages extends NLS {

	public static String Empty;
	public static String Family;
	public static String ChooseVehicle;
	public static String Other;
	public static String OtherTitle;
	public static String OtherHint;
	public static String Value;
	public static String Enter;
	public static String Remove;
	public static String RemoveHint;
	public static String Undo;
	public static String Redo;
	public static String Clear;
	public static String CopyCase;
	public static String CaseCopied;
	public static String NewJob;
	public static String BackToProposed;
	public static String NotVerified;
	public static String Keep;
	public static String Kept;
	public static String KeptUnsaved;
	public static String Sheet;
	public static String SheetNotWritten;
	public static String NotKept;
	public static String Draft;
	public static String DraftHint;
	public static String DecidingTest;
	public static String Cause;
	public static String NoTest;
	public static String ChooseCause;
	public static String NotDrafted;
	public static String Result;
	public static String Working;
	public static String Rules;
	public static String RulesShown;

	static {
		NLS.initializeMessages(BenchMessages.class.getPackageName() + ".messages", BenchMessages.class);
	}

	private BenchMessages() {
	}
}
