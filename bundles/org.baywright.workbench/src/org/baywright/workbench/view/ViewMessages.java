package org.baywright.workbench.view;

import org.eclipse.osgi.util.NLS;

/** Texts that several views use, and those of flaws and picture, in {@code messages.properties}. */
public final class ViewMessages extends NLS {

	public static String NotWritten;
	public static String NotWrittenBecause;
	public static String Vehicles;
	public static String AllFamilies;
	public static String RulesAbout;
	public static String Which;
	public static String Everything;
	public static String ASign;
	public static String AFault;
	public static String ARule;

	public static String Search;
	public static String Flaws;
	public static String FlawDetails;
	public static String ChooseFlaw;
	public static String Errors;
	public static String Warnings;
	public static String Notes;
	public static String Accepted;
	public static String OnlyThisFile;
	public static String GoToPlace;
	public static String ExplainKind;
	public static String SeeAlso;
	public static String AcceptedBecause;
	public static String WhatCouldBeDone;
	public static String MoreAboutIt;

	public static String PictureEmpty;
	public static String PictureNoRules;
	public static String PictureHelp;
	public static String DrawingPicture;
	public static String Larger;
	public static String Smaller;
	public static String Fit;
	public static String SaveSvg;

	public static String Progress;
	public static String Stop;
	public static String ReadingNow;
	public static String CheckingNow;
	public static String NoProject;

	static {
		NLS.initializeMessages(ViewMessages.class.getPackageName() + ".messages", ViewMessages.class);
	}

	private ViewMessages() {
	}
}
