package org.baywright.application;

import java.nio.file.Path;
import java.util.Arrays;

import org.baywright.workbench.Icon;
import org.baywright.workbench.wizard.FolderOfRules;
import org.baywright.workbench.wizard.Wizards;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceColors;
import org.eclipse.jface.viewers.StyledCellLabelProvider;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.forms.events.HyperlinkAdapter;
import org.eclipse.ui.forms.events.HyperlinkEvent;
import org.eclipse.ui.forms.widgets.ImageHyperlink;
import org.eclipse.ui.navigator.CommonViewer;
import org.eclipse.ui.navigator.resources.ProjectExplorer;

/**
 * Offers in the project tree, while there is no project, how to begin with rules; the platform has links there for projects
 * of any kind, which hold no rules.
 */
final class EmptyTree {

	private static final String OURS = EmptyTree.class.getName();

	private EmptyTree() {
	}

	/** Looks after the tree of a window whenever it is opened. */
	static void install(IWorkbenchWindow window) {
		window.getPartService().addPartListener(new IPartListener2() {
			@Override
			public void partOpened(IWorkbenchPartReference part) {
				if (part.getPart(false) instanceof ProjectExplorer view) {
					opened(view.getCommonViewer());
				}
			}
		});
		if (window.getActivePage() != null && window.getActivePage().findView(ProjectExplorer.VIEW_ID) instanceof ProjectExplorer view) {
			opened(view.getCommonViewer());
		}
	}

	private static void opened(CommonViewer viewer) {
		// names that the platform draws itself are drawn over one another when a part of the tree is drawn anew
		if (viewer.getLabelProvider() instanceof StyledCellLabelProvider labels) {
			labels.setOwnerDrawEnabled(false);
			viewer.refresh();
		}
		fill(viewer.getTree());
	}

	/** Beside the tree lies what the platform shows in its stead; it fills that anew whenever the last project goes. */
	private static void fill(Tree tree) {
		if (tree.isDisposed() || !(tree.getParent().getLayout() instanceof StackLayout)) {
			return;
		}
		for (Control beside : tree.getParent().getChildren()) {
			if (beside != tree && beside instanceof Composite area && area.getData(OURS) == null) {
				area.setData(OURS, Boolean.TRUE);
				area.addListener(SWT.Paint, event -> {
					if (!isOurs(area)) {
						area.getDisplay().asyncExec(() -> fill(area));
					}
				});
				area.addDisposeListener(event -> tree.getDisplay().asyncExec(() -> fill(tree)));
				takeDrops(area);
				fill(area);
			}
		}
	}

	private static boolean isOurs(Composite area) {
		return Arrays.stream(area.getChildren()).allMatch(child -> child.getData(OURS) != null);
	}

	private static void fill(Composite area) {
		if (area.isDisposed() || area.getChildren().length > 0 && isOurs(area)) {
			return;
		}
		for (Control theirs : area.getChildren()) {
			theirs.dispose();
		}
		GridLayoutFactory.fillDefaults().margins(10, 10).spacing(0, 8).applyTo(area);
		Label label = new Label(area, SWT.WRAP);
		label.setText(AppMessages.EmptyTree);
		GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(label);
		way(area, Icon.PROJECT, AppMessages.WelcomeProject, Wizards::newProject);
		way(area, Icon.FILE, AppMessages.EmptyTreeBringIn, () -> FolderOfRules.choose(area.getShell()));
		way(area, Icon.SKELETON, AppMessages.WelcomeExample, Wizards::example);
		for (Control ours : area.getChildren()) {
			ours.setData(OURS, Boolean.TRUE);
		}
		area.layout(true, true);
	}

	private static void takeDrops(Composite area) {
		DropTarget target = new DropTarget(area, DND.DROP_COPY | DND.DROP_MOVE | DND.DROP_LINK | DND.DROP_DEFAULT);
		target.setTransfer(new Transfer[] { FileTransfer.getInstance() });
		target.addDropListener(new DropTargetAdapter() {
			@Override
			public void dragEnter(DropTargetEvent event) {
				event.detail = DND.DROP_COPY;
			}

			@Override
			public void drop(DropTargetEvent event) {
				if (event.data instanceof String[] names) {
					for (String name : names) {
						FolderOfRules.bringIn(area.getShell(), Path.of(name));
					}
				}
			}
		});
	}

	private static void way(Composite area, Icon icon, String text, Runnable go) {
		ImageHyperlink link = new ImageHyperlink(area, SWT.NONE);
		link.setImage(icon.image());
		link.setText(text);
		link.setForeground(JFaceColors.getHyperlinkText(area.getDisplay()));
		link.setUnderlined(true);
		link.addHyperlinkListener(new HyperlinkAdapter() {
			@Override
			public void linkActivated(HyperlinkEvent event) {
				go.run();
			}
		});
	}
}
