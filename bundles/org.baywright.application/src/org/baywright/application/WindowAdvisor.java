package org.baywright.application;

import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
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
		// five views beside an editor need room: the first window takes what the screen has, up to a size that reads well
		Rectangle screen = Display.getCurrent().getPrimaryMonitor().getClientArea();
		window.setInitialSize(new Point(Math.min(screen.width, 1920), Math.min(screen.height, 1200)));
		window.setShowCoolBar(true);
		window.setShowStatusLine(true);
		window.setShowProgressIndicator(true);
		window.setShowPerspectiveBar(false);
		window.setShowMenuBar(true);
		window.setTitle(AppMessages.WindowTitle);
	}

	@Override
	public void postWindowOpen() {
		EmptyTree.install(getWindowConfigurer().getWindow());
	}
}
