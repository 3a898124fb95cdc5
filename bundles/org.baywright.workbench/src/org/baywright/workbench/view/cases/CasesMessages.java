package org.baywright.workbench.view.cases;

import org.eclipse.osgi.util.NLS;

/** Texts of the view of finished jobs, in {@code messages.properties}. */
final class CasesMessages extends NLS {

	public static String Empty;
	public static String Name;
	public static String Job;
	public static String Vehicle;
	public static String Signs;
	public static String End;
	public static String Details;
	public static String Search;
	public static String FailingOnly;
	public static String Run;
	public static String Running;
	public static String RanProgress;
	public static String WhyItFails;
	public static String Decided;
	public static String Fired;
	public static String Verdicts;
	public static String NothingFired;
	public static String ByVehicle;
	public static String BySign;
	public static String Hidden;
	public static String GoTo;
	public static String Draft;

	static {
		NLS.initializeMessages(CasesMessages.class.getPackageName() + ".messages", CasesMessages.class);
	}

	private CasesMessages() {
	}
}
