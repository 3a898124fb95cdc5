package org.baywright.workbench.search;

import org.baywright.workbench.Icon;
import org.eclipse.core.resources.IFile;
import org.eclipse.search.ui.text.Match;

/** A place in the list of the search view. */
public final class PlaceFound extends Match {

	private final String line;
	private final Icon icon;

	/**
	 * @param file where it is
	 * @param offset characters before the place
	 * @param length characters of it
	 * @param line what the list shows
	 * @param icon shown before the line
	 */
	public PlaceFound(IFile file, int offset, int length, String line, Icon icon) {
		super(file, offset, length);
		this.line = line;
		this.icon = icon;
	}

	/** Returns what the list shows. */
	public String line() {
		return line;
	}

	Icon icon() {
		return icon;
	}
}
