package org.baywright.workbench.preference;

import org.eclipse.osgi.util.NLS;

/** Texts of the preferences, in {@code messages.properties}. */
final class PreferenceMessages extends NLS {

	public static String Description;
	public static String Author;
	public static String Notes;

	static {
		NLS.initializeMessages(PreferenceMessages.class.getPackageName() + ".messages", PreferenceMessages.class);
	}

	private PreferenceMessages() {
	}
}
