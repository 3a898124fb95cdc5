package org.baywright.workbench.view.plan;

import org.eclipse.osgi.util.NLS;

/** Texts of the plan. */
final class PlanMessages extends NLS {

	public static String Vehicle;
	public static String Complaint;
	public static String Figures;
	public static String Empty;
	public static String Planning;
	public static String Sheet;
	public static String Hold;
	public static String SheetNotWritten;

	static {
		NLS.initializeMessages(PlanMessages.class.getPackageName() + ".messages", PlanMessages.class);
	}

	private PlanMessages() {
	}
}
