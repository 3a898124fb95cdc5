package org.baywright.application;

import org.eclipse.swt.graphics.Point;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;

/** What the window shows around its page. */
final class WindowAdvisor extends WorkbenchWindowAdvisor {

	WindowAdvisor(IWorkbenchWindowConfigurer configurer) {
		super(configurer);
	}

	@Override
	public ActionBarAdvisor createActionBarAdvisor(IActionBarConfigurer configurer) {
		return new MenuAdvisor(configurer);
	}

	@Override
	public void preWindowOpen() {
		IWorkbenchWindowConfigurer window = getWindowConfigurer();
		window.setInitialSize(new Point(1360, 860));
		window.setShowCoolBar(true);
		window.setShowStatusLine(true);
		window.setShowProgressIndicator(true);
		window.setShowPerspectiveBar(false);
		window.setShowMenuBar(true);
		window.setTitle(AppMessages.WindowTitle);
	}
}
