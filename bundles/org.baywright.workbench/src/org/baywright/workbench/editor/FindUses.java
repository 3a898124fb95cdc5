package org.baywright.workbench.editor;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.search.ui.NewSearchUI;

/** Lists all places where the thing at the cursor is named, in the platform's search view. */
public final class FindUses extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		AtCursor.of(event).ifPresent(at -> NewSearchUI
				.runQueryInBackground(new UsesQuery(at.edited(), at.edited().document().get(), at.selection().getOffset())));
		return null;
	}
}
