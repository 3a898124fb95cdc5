package org.baywright.workbench.command;

import org.baywright.workbench.walk.WalkView;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Opens the ten-minute walk. */
public final class TakeWalk extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		WalkView.open();
		return null;
	}
}
