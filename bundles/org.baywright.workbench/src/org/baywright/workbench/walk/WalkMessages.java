package org.baywright.workbench.walk;

import org.eclipse.osgi.util.NLS;

/** Texts of the walk's view, in {@code messages.properties}. */
final class WalkMessages extends NLS {

	public static String StepOf;
	public static String Before;
	public static String Next;
	public static String End;
	public static String Missing;
	public static String Failed;

	static {
		NLS.initializeMessages(WalkMessages.class.getPackageName() + ".messages", WalkMessages.class);
	}

	private WalkMessages() {
	}
}
