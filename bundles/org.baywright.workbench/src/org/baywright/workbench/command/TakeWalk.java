package org.baywright.workbench.command;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.cheatsheets.OpenCheatSheetAction;

/** Opens the ten-minute walk. */
public final class TakeWalk extends AbstractHandler {

	/** Id of the walk. */
	public static final String WALK = "org.baywright.workbench.walk";

	@Override
	public Object execute(ExecutionEvent event) {
		new OpenCheatSheetAction(WALK).run();
		return null;
	}
}
