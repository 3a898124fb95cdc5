package org.baywright.workbench.view.bench;

import org.eclipse.osgi.util.NLS;

/** Texts of the bench, in {@code messages.properties}. */
final class BenchMessages extends NLS {

	public static String Empty;
	public static String Family;
	public static String Finding;
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
	public static String Result;
	public static String Working;
	public static String Warnings;
	public static String Verdicts;
	public static String Next;
	public static String Fired;
	public static String First;
	public static String Waiting;
	public static String Never;
	public static String Unsure;

	static {
		NLS.initializeMessages(BenchMessages.class.getPackageName() + ".messages", BenchMessages.class);
	}

	private BenchMessages() {
	}
}
