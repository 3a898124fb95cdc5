package org.baywright.application;

import org.eclipse.jface.action.GroupMarker;
import org.eclipse.jface.action.ICoolBarManager;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.action.ToolBarContributionItem;
import org.eclipse.jface.action.ToolBarManager;
import org.eclipse.swt.SWT;
import org.eclipse.ui.IWorkbenchActionConstants;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.actions.ActionFactory.IWorkbenchAction;
import org.eclipse.ui.actions.ContributionItemFactory;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.menus.CommandContributionItem;
import org.eclipse.ui.menus.CommandContributionItemParameter;
import org.eclipse.ui.texteditor.ITextEditorActionDefinitionIds;

/**
 * The menus that every text workbench has; what is about rules comes from the plug-in's own menu contributions. File and
 * Edit have names of their own, so that the platform's parts do not put entries for programmers into them.
 */
final class MenuAdvisor extends ActionBarAdvisor {

	private IWorkbenchWindow window;

	MenuAdvisor(IActionBarConfigurer configurer) {
		super(configurer);
	}

	@Override
	protected void makeActions(IWorkbenchWindow of) {
		window = of;
	}

	private IWorkbenchAction action(ActionFactory factory) {
		IWorkbenchAction known = (IWorkbenchAction) getAction(factory.getId());
		if (known != null) {
			return known;
		}
		IWorkbenchAction made = factory.create(window);
		register(made);
		return made;
	}

	private CommandContributionItem command(String id) {
		return new CommandContributionItem(new CommandContributionItemParameter(window, null, id, CommandContributionItem.STYLE_PUSH));
	}

	@Override
	protected void fillMenuBar(IMenuManager bar) {
		bar.add(file());
		bar.add(edit());
		bar.add(new GroupMarker(IWorkbenchActionConstants.MB_ADDITIONS));
		bar.add(view());
		bar.add(help());
	}

	private MenuManager file() {
		MenuManager menu = new MenuManager(AppMessages.FileMenu, "org.baywright.application.file");
		MenuManager make = new MenuManager(AppMessages.NewMenu, "new");
		make.add(ContributionItemFactory.NEW_WIZARD_SHORTLIST.create(window));
		make.add(new Separator(IWorkbenchActionConstants.MB_ADDITIONS));
		menu.add(make);
		menu.add(new Separator());
		menu.add(action(ActionFactory.CLOSE));
		menu.add(action(ActionFactory.CLOSE_ALL));
		menu.add(new Separator());
		menu.add(action(ActionFactory.SAVE));
		menu.add(action(ActionFactory.SAVE_AS));
		menu.add(action(ActionFactory.SAVE_ALL));
		menu.add(action(ActionFactory.REVERT));
		menu.add(new Separator());
		menu.add(action(ActionFactory.RENAME));
		menu.add(action(ActionFactory.REFRESH));
		menu.add(action(ActionFactory.PRINT));
		menu.add(new Separator());
		menu.add(command("org.baywright.workbench.bringIn"));
		menu.add(command("org.baywright.workbench.importExample"));
		menu.add(command("org.baywright.workbench.exportPack"));
		menu.add(new Separator(IWorkbenchActionConstants.MB_ADDITIONS));
		menu.add(command(IWorkbenchCommandConstants.FILE_RESTART));
		menu.add(action(ActionFactory.QUIT));
		return menu;
	}

	private MenuManager edit() {
		MenuManager menu = new MenuManager(AppMessages.EditMenu, "org.baywright.application.edit");
		menu.add(action(ActionFactory.UNDO));
		menu.add(action(ActionFactory.REDO));
		menu.add(new Separator());
		menu.add(action(ActionFactory.CUT));
		menu.add(action(ActionFactory.COPY));
		menu.add(action(ActionFactory.PASTE));
		menu.add(new Separator());
		menu.add(action(ActionFactory.DELETE));
		menu.add(action(ActionFactory.SELECT_ALL));
		menu.add(new Separator());
		menu.add(action(ActionFactory.FIND));
		menu.add(new Separator());
		menu.add(command(ITextEditorActionDefinitionIds.CONTENT_ASSIST_PROPOSALS));
		menu.add(command(ITextEditorActionDefinitionIds.QUICK_ASSIST));
		menu.add(new Separator(IWorkbenchActionConstants.MB_ADDITIONS));
		return menu;
	}

	private MenuManager view() {
		MenuManager menu = new MenuManager(AppMessages.ViewMenu, IWorkbenchActionConstants.M_WINDOW);
		MenuManager show = new MenuManager(AppMessages.ShowMenu, "show");
		show.add(ContributionItemFactory.VIEWS_SHORTLIST.create(window));
		menu.add(show);
		menu.add(command("org.baywright.application.putBack"));
		menu.add(new Separator());
		menu.add(action(ActionFactory.MAXIMIZE));
		menu.add(action(ActionFactory.BACKWARD_HISTORY));
		menu.add(action(ActionFactory.FORWARD_HISTORY));
		menu.add(action(ActionFactory.NEXT_EDITOR));
		menu.add(action(ActionFactory.NEXT_PART));
		menu.add(new Separator(IWorkbenchActionConstants.MB_ADDITIONS));
		menu.add(action(ActionFactory.PREFERENCES));
		return menu;
	}

	private MenuManager help() {
		MenuManager menu = new MenuManager(AppMessages.HelpMenu, IWorkbenchActionConstants.M_HELP);
		menu.add(action(ActionFactory.INTRO));
		menu.add(new GroupMarker(IWorkbenchActionConstants.HELP_START));
		menu.add(new Separator("group.main"));
		menu.add(action(ActionFactory.HELP_CONTENTS));
		menu.add(action(ActionFactory.DYNAMIC_HELP));
		menu.add(new GroupMarker(IWorkbenchActionConstants.HELP_END));
		menu.add(new Separator(IWorkbenchActionConstants.MB_ADDITIONS));
		menu.add(action(ActionFactory.SHOW_QUICK_ACCESS));
		menu.add(new Separator());
		menu.add(command("org.baywright.application.about"));
		return menu;
	}

	@Override
	protected void fillCoolBar(ICoolBarManager bar) {
		ToolBarManager file = new ToolBarManager(SWT.FLAT);
		file.add(new GroupMarker(IWorkbenchActionConstants.FILE_START));
		file.add(action(ActionFactory.NEW_WIZARD_DROP_DOWN));
		file.add(action(ActionFactory.SAVE));
		file.add(action(ActionFactory.UNDO));
		file.add(action(ActionFactory.REDO));
		file.add(action(ActionFactory.BACKWARD_HISTORY));
		file.add(action(ActionFactory.FORWARD_HISTORY));
		file.add(new GroupMarker(IWorkbenchActionConstants.FILE_END));
		bar.add(new ToolBarContributionItem(file, IWorkbenchActionConstants.TOOLBAR_FILE));
		bar.add(new GroupMarker(IWorkbenchActionConstants.MB_ADDITIONS));
	}
}
