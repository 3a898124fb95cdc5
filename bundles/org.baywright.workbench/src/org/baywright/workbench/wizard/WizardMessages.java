package org.baywright.workbench.wizard;

import org.eclipse.osgi.util.NLS;

/** Texts of the wizards, in {@code messages.properties}. */
final class WizardMessages extends NLS {

	public static String ProjectTitle;
	public static String ProjectText;
	public static String ProjectName;
	public static String ProjectFailed;
	public static String FamilyTitle;
	public static String FamilyText;
	public static String FamilyCalled;
	public static String FamilyName;
	public static String FamilyYears;
	public static String FamilyTo;
	public static String FamilyEngines;
	public static String FamilyEnginesHint;
	public static String FamilyVin;
	public static String Starter;
	public static String Author;
	public static String File;
	public static String RuleTitle;
	public static String RuleText;
	public static String RuleAbout;
	public static String RuleName;
	public static String RuleFamily;
	public static String RuleEveryFamily;
	public static String RuleSign;
	public static String RuleNoSign;
	public static String RuleTest;
	public static String RuleExpected;
	public static String RuleProves;
	public static String RuleWhat;
	public static String RuleBecause;
	public static String RulePreview;
	public static String RuleNoTests;
	public static String FileTitle;
	public static String FileText;
	public static String NoProject;
	public static String FileThere;
	public static String FileBadName;
	public static String ExampleTitle;
	public static String ExampleText;
	public static String ExampleThere;
	public static String PackTitle;
	public static String PackText;
	public static String PackProject;
	public static String PackFile;
	public static String PackBrowse;
	public static String PackFilter;
	public static String PackNoFile;
	public static String PackWaiting;
	public static String PackBlocks;
	public static String PackJobs;
	public static String PackNoJobs;
	public static String PackWritten;
	public static String PackShow;
	public static String PackOpenSheet;
	public static String PackNoFolder;
	public static String PackOver;
	public static String PackFailed;
	public static String PackSheet;
	public static String PackDraft;
	public static String PackExists;
	public static String NotWritten;

	public static String FolderTitle;
	public static String FolderReading;
	public static String FolderIsFile;
	public static String FolderEmpty;
	public static String FolderIsWorkspace;
	public static String FolderWithin;
	public static String FolderAround;
	public static String FolderFailed;
	public static String FolderSeveral;
	public static String FolderEach;
	public static String FolderAsOne;

	static {
		NLS.initializeMessages(WizardMessages.class.getPackageName() + ".messages", WizardMessages.class);
	}

	private WizardMessages() {
	}
}
