package org.baywright.workbench.editor;

import org.baywright.language.ide.names.Use;
import org.eclipse.core.resources.IFile;
import org.eclipse.search.ui.text.Match;

/** A place in the list of the search view. */
final class UseFound extends Match {

	private final Use use;

	UseFound(IFile file, Use use) {
		super(file, use.offset(), use.length());
		this.use = use;
	}

	Use use() {
		return use;
	}
}
