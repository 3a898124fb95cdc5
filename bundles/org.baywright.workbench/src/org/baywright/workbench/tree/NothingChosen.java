package org.baywright.workbench.tree;

import org.eclipse.ui.IActionBars;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.navigator.CommonActionProvider;

/** Greys what the platform leaves live while nothing is chosen in the project tree. */
public final class NothingChosen extends CommonActionProvider {

	@Override
	public void fillActionBars(IActionBars bars) {
		if (getContext() == null || getContext().getSelection().isEmpty()) {
			bars.setGlobalActionHandler(ActionFactory.RENAME.getId(), null);
			bars.updateActionBars();
		}
	}
}
