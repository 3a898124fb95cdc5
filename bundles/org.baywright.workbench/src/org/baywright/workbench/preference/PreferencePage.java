package org.baywright.workbench.preference;

import org.baywright.workbench.Baywright;
import org.eclipse.jface.preference.BooleanFieldEditor;
import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.StringFieldEditor;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;

/** The page on which a user sets the preferences. */
public final class PreferencePage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {

	/** Makes the page. */
	public PreferencePage() {
		super(GRID);
		setDescription(PreferenceMessages.Description);
	}

	@Override
	public void init(IWorkbench workbench) {
		setPreferenceStore(Baywright.instance().getPreferenceStore());
	}

	@Override
	protected void createFieldEditors() {
		addField(new StringFieldEditor(Preferences.AUTHOR, PreferenceMessages.Author, getFieldEditorParent()));
		addField(new BooleanFieldEditor(Preferences.NOTES, PreferenceMessages.Notes, getFieldEditorParent()));
	}
}
