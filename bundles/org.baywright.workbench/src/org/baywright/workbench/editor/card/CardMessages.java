package org.baywright.workbench.editor.card;

import org.eclipse.osgi.util.NLS;

/** Texts of the card, in {@code messages.properties}. */
final class CardMessages extends NLS {

	public static String Elements;
	public static String Filter;
	public static String Add;
	public static String Delete;
	public static String Duplicate;
	public static String AddNew;
	public static String DeleteTitle;
	public static String DeleteUsed;
	public static String DeleteAnyway;
	public static String Keep;
	public static String More;
	public static String Another;
	public static String AddAlso;
	public static String AddGroup;
	public static String Remove;
	public static String RemoveLine;
	public static String Up;
	public static String Down;
	public static String Choose;
	public static String Missing;
	public static String Begun;
	public static String Head;
	public static String NewCard;
	public static String NewHint;
	public static String Nothing;
	public static String ToText;
	public static String Rename;
	public static String Mend;

	static {
		NLS.initializeMessages(CardMessages.class.getPackageName() + ".messages", CardMessages.class);
	}

	private CardMessages() {
	}
}
