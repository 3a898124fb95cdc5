package org.baywright.workbench.tree;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;

import org.baywright.workbench.Ui;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.navigator.CommonNavigator;
import org.eclipse.ui.navigator.resources.ProjectExplorer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The project tree: what is grey while nothing is chosen. */
class TreeTest {

	private static final String RULES = "family tarn \"Tarn\"\n";

	private IProject project;
	private CommonNavigator view;
	private Tree tree;

	@BeforeEach
	void makeAProject() throws Exception {
		Ui.closeWelcome();
		project = ProjectMaker.make("tree", new TreeMap<>(Map.of("a.bay", RULES)), new NullProgressMonitor());
		view = Ui.get(() -> (CommonNavigator) Ui.page().showView(ProjectExplorer.VIEW_ID));
		tree = Ui.get(() -> view.getCommonViewer().getTree());
		Ui.await(() -> "not shown", () -> tree.getItemCount() == 1);
	}

	@AfterEach
	void leaveNothing() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		project.delete(true, true, null);
	}

	@Test
	void renameIsGreyWhileNothingIsChosen() {
		choose(StructuredSelection.EMPTY);
		assertFalse(canRename());
		choose(new StructuredSelection(project));
		assertTrue(canRename());
		choose(StructuredSelection.EMPTY);
		assertFalse(canRename());
	}

	private void choose(StructuredSelection what) {
		Ui.run(() -> {
			Ui.page().activate(view);
			view.getCommonViewer().setSelection(what, true);
		});
		Ui.pause(300);
	}

	private static boolean canRename() {
		return Ui.get(() -> {
			var service = PlatformUI.getWorkbench().getService(ICommandService.class);
			return service.getCommand(ActionFactory.RENAME.getCommandId()).isEnabled();
		});
	}
}
