package org.baywright.workbench.editor;

import org.eclipse.osgi.util.NLS;

/** Texts of the editor, in {@code messages.properties}. */
final class EditorMessages extends NLS {

	public static String Declaration;
	public static String OpenDeclaration;
	public static String Outline;
	public static String RenameTitle;
	public static String RenameNew;
	public static String RenameNothing;
	public static String UsesTitle;
	public static String UsesMatches;
	public static String UsesNone;
	public static String TidySyntax;
	public static String TidyTitle;
	public static String JumpTitle;
	public static String JumpText;
	public static String JumpProjectText;
	public static String FixFailed;
	public static String FixPreview;
	public static String FixStale;
	public static String AcceptPreview;
	public static String AcceptWhy;
	public static String AcceptBlank;
	public static String SourceWhy;
	public static String SourceBlank;
	public static String SourceWho;
	public static String SourceNobody;
	public static String BackTitle;
	public static String BackText;
	public static String BackOvertaken;
	public static String BackGone;

	static {
		NLS.initializeMessages(EditorMessages.class.getPackageName() + ".messages", EditorMessages.class);
	}

	private EditorMessages() {
	}
}
