package org.baywright.workbench;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;
import org.eclipse.ui.navigator.resources.ProjectExplorer;
import org.eclipse.ui.progress.IProgressConstants;

/**
 * Projects on the left with the outline or the walk beneath them, the text in the middle, what was found beneath it, the
 * bench or the help on the right. The walk covers nothing of what it speaks of.
 */
public final class RulesPerspective implements IPerspectiveFactory {

	/** The perspective's id. */
	public static final String ID = "org.baywright.workbench.rules";

	private static final String FLAWS = "org.baywright.workbench.view.flaws";
	private static final String CASES = "org.baywright.workbench.view.cases";
	private static final String BENCH = "org.baywright.workbench.view.bench";
	private static final String PICTURE = "org.baywright.workbench.view.picture";
	private static final String PLAN = "org.baywright.workbench.view.plan";
	private static final String GRID = "org.baywright.workbench.view.grid";
	private static final String HELP = "org.baywright.workbench.view.help";
	private static final String WALK = "org.baywright.workbench.view.walk";

	@Override
	public void createInitialLayout(IPageLayout layout) {
		layout.setEditorAreaVisible(true);
		String editors = layout.getEditorArea();
		layout.addView(ProjectExplorer.VIEW_ID, IPageLayout.LEFT, 0.25f, editors);
		IFolderLayout left = layout.createFolder("left", IPageLayout.BOTTOM, 0.4f, ProjectExplorer.VIEW_ID);
		left.addView(IPageLayout.ID_OUTLINE);
		left.addPlaceholder(WALK);
		IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, 0.68f, editors);
		right.addView(BENCH);
		right.addPlaceholder(HELP);
		IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.5f, editors);
		below.addView(FLAWS);
		below.addView(PICTURE);
		below.addView(PLAN);
		below.addView(GRID);
		below.addView(CASES);
		below.addPlaceholder("org.eclipse.search.ui.views.SearchView");
		below.addPlaceholder(IProgressConstants.PROGRESS_VIEW_ID);
		below.addPlaceholder("org.eclipse.pde.runtime.LogView");
		for (String view : new String[] { FLAWS, PICTURE, PLAN, GRID, BENCH, CASES, HELP, WALK, ProjectExplorer.VIEW_ID, IPageLayout.ID_OUTLINE,
				IProgressConstants.PROGRESS_VIEW_ID }) {
			layout.addShowViewShortcut(view);
		}
		for (String wizard : new String[] { "project", "family", "rule", "file" }) {
			layout.addNewWizardShortcut("org.baywright.workbench.wizard." + wizard);
		}
	}
}
