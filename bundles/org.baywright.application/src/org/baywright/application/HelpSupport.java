package org.baywright.application;

import org.baywright.workbench.help.Help;
import org.eclipse.help.IContext;
import org.eclipse.help.IHelpResource;
import org.eclipse.ui.help.AbstractHelpUI;

/** Answers the platform's calls for help with the workbench's own pages. */
public final class HelpSupport extends AbstractHelpUI {

	@Override
	public void displayHelp() {
		Help.show(Help.START);
	}

	@Override
	public void displayDynamicHelp() {
		Help.showHere();
	}

	@Override
	public void displayContext(IContext context, int x, int y) {
		IHelpResource[] topics = context.getRelatedTopics();
		if (topics.length > 0) {
			displayHelpResource(topics[0].getHref());
		} else {
			Help.showHere();
		}
	}

	@Override
	public void displayHelpResource(String href) {
		Help.show(Help.pageOf(href));
	}

	@Override
	public boolean isContextHelpDisplayed() {
		return false;
	}
}
