package org.baywright.workbench.view.bench;

import org.eclipse.osgi.util.NLS;

/** Texts of the bench. */
final class BenchMessages extends NLS {

	public static String Empty;
	public static String Family;
	public static String ChooseVehicle;
	public static String Other;
	public static String Value;
	public static String ValueHint;
	public static String Enter;
	public static String Entered;
	public static String Kind;
	public static String What;
	public static String Remove;
	public static String Undo;
	public static String Redo;
	public static String Clear;
	public static String CopyCase;
	public static String CaseCopied;
	public static String NewJob;
	public static String Keep;
	public static String Kept;
	public static String Sheet;
	public static String SheetNotWritten;
	public static String NotKept;
	public static String Draft;
	public static String DecidingTest;
	public static String Cause;
	public static String NoTest;
	public static String ChooseCause;
	public static String NotDrafted;
	public static String Result;
	public static String Working;
	public static String Warnings;
	public static String Verdicts;
	public static String How;
	public static String Why;
	public static String Instead;
	public static String CautionsFirst;
	public static String Rules;
	public static String RulesShown;
	public static String Fired;
	public static String First;
	public static String Waiting;
	public static String Never;
	public static String Unsure;
	public static String Repairs;
	public static String Needs;
	public static String Where;
	public static String Takes;
	public static String Who;
	public static String Steps;
	public static String Tell;
	public static String Changes;
	public static String Verification;
	public static String SoFar;
	public static String NotTried;

	static {
		NLS.initializeMessages(BenchMessages.class.getPackageName() + ".messages", BenchMessages.class);
	}

	private BenchMessages() {
	}
}
