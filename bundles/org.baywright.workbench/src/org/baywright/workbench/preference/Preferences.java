package org.baywright.workbench.preference;

import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.preferences.AbstractPreferenceInitializer;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.preference.IPreferenceStore;
import org.osgi.service.prefs.BackingStoreException;

/** What a user can set, with its usual values. */
public final class Preferences extends AbstractPreferenceInitializer {

	static final String AUTHOR = "author";
	static final String NOTES = "notes";

	@Override
	public void initializeDefaultPreferences() {
		store().setDefault(AUTHOR, "");
		store().setDefault(NOTES, true);
	}

	private static IPreferenceStore store() {
		return Baywright.instance().getPreferenceStore();
	}

	/** Returns who writes rules here; the empty text if nobody has said so. */
	public static String author() {
		return store().getString(AUTHOR);
	}

	/** Remembers who writes rules here. */
	public static void setAuthor(String author) {
		if (!author.isBlank()) {
			store().setValue(AUTHOR, author.strip());
			try {
				// at once: after a crash nobody shall have to type it again
				InstanceScope.INSTANCE.getNode(Baywright.ID).flush();
			} catch (BackingStoreException e) {
				Baywright.log("The author cannot be remembered.", e);
			}
		}
	}

	/** Returns whether the editor tells above each element how it is used. */
	public static boolean showNotes() {
		return store().getBoolean(NOTES);
	}
}
