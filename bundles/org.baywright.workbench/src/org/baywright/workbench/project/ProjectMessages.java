package org.baywright.workbench.project;

import org.eclipse.osgi.util.NLS;

/** Texts about projects, in {@code messages.properties}. */
final class ProjectMessages extends NLS {

	public static String PictureFailed;
	public static String PictureTitle;
	public static String Reading;
	public static String ReadingFiles;
	public static String Unreadable;
	public static String Closed;
	public static String Stopped;
	public static String Failed;
	public static String OfferTitle;
	public static String OfferText;
	public static String OfferNever;

	static {
		NLS.initializeMessages(ProjectMessages.class.getPackageName() + ".messages", ProjectMessages.class);
	}

	private ProjectMessages() {
	}
}
