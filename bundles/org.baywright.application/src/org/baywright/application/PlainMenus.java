package org.baywright.application;

import java.util.Collections;
import java.util.Set;
import java.util.WeakHashMap;
import java.util.regex.Pattern;

import org.eclipse.jface.action.IContributionItem;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Menu;

/** Takes out of the menus of the right button what the platform offers programmers and nobody who writes rules needs. */
final class PlainMenus {

	private static final Pattern PROGRAMMING = Pattern.compile("team\\.main|common\\.new\\.menu|(compareWith|replaceWith)Menu|org\\.eclipse\\.ui\\.genericeditor\\..*"
			+ "|ShiftLeft|ShiftRight|Preferences\\.ContextAction|import|export|org\\.eclipse\\.ui\\.(projectConfigure|CloseResourceAction|CloseUnrelatedProjectsAction|MoveResourceAction|framelist\\..*)|group\\.openWith");
	private static final Set<String> PROGRAMMING_TITLES = Set.of("Open With", "Show In");

	private final Set<IMenuManager> known = Collections.newSetFromMap(new WeakHashMap<>());

	private PlainMenus() {
	}

	/** Watches every menu that is shown from now on. */
	static void install(Display display) {
		PlainMenus menus = new PlainMenus();
		display.addFilter(SWT.Show, event -> {
			if (event.widget instanceof Menu menu && menu.getParentItem() == null
					&& menu.getData(MenuManager.MANAGER_KEY) instanceof MenuManager manager && menus.known.add(manager)) {
				// behind all others, which fill the menu
				manager.addMenuListener(PlainMenus::thin);
			}
		});
	}

	private static void thin(IMenuManager menu) {
		for (IContributionItem item : menu.getItems()) {
			String id = String.valueOf(item.getId());
			// a title may carry its keys behind a tab
			String title = item instanceof MenuManager below ? below.getMenuText().replace("&", "").replaceAll("\\t.*", "") : "";
			if (PROGRAMMING.matcher(id).matches() || PROGRAMMING_TITLES.contains(title)) {
				item.setVisible(false);
			}
		}
	}
}
