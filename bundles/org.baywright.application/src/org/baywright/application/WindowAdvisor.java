package org.baywright.application;

import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.model.application.ui.menu.MToolBar;
import org.eclipse.e4.ui.workbench.modeling.EModelService;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;

/** What the window shows around its page. */
final class WindowAdvisor extends WorkbenchWindowAdvisor {

	private static final String PRESENTATION = "org.eclipse.ui.edit.text.actionSet.presentation";

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

	/** What programmers look at in a text: characters that do not show, blocks of columns. */
	@Override
	public void postWindowOpen() {
		IWorkbenchWindow window = getWindowConfigurer().getWindow();
		EmptyTree.install(window);
		window.getPartService().addPartListener(new IPartListener2() {
			@Override
			public void partActivated(IWorkbenchPartReference part) {
				// the platform adds them when it hears of the editor too
				Display.getCurrent().asyncExec(() -> hide(window, PRESENTATION));
			}
		});
	}

	private static void hide(IWorkbenchWindow window, String toolBar) {
		EModelService model = window.getService(EModelService.class);
		MWindow shown = window.getService(MWindow.class);
		if (model != null && shown != null) {
			model.findElements(shown, toolBar, MToolBar.class, null, EModelService.IN_TRIM).forEach(bar -> bar.setToBeRendered(false));
		}
	}
}
