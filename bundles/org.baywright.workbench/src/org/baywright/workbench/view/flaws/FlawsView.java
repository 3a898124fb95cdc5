package org.baywright.workbench.view.flaws;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.baywright.model.Severity;
import org.baywright.presenter.Link;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.flaws.Filter;
import org.baywright.presenter.flaws.Flaws;
import org.baywright.presenter.flaws.Group;
import org.baywright.presenter.flaws.Item;
import org.baywright.presenter.flaws.Tone;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.Icon;
import org.baywright.workbench.editor.Resolutions;
import org.baywright.workbench.help.Help;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.view.Details;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.ViewMessages;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.IToolBarManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ColumnViewerToolTipSupport;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWorkbenchPartReference;

/** Shows what the checks found, by kind, with the evidence of the chosen flaw. */
public final class FlawsView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.flaws";

	/** Beyond this many flaws the kinds are folded at first. */
	private static final int MANY = 500;

	private final Set<String> folded = new HashSet<>();
	private Label tone;
	private Label headline;
	private TreeViewer tree;
	private Details details;
	private Latest looking;
	private Action onlyFile;
	/** Titles of what can be done about the flaw that is told. */
	private List<String> fixes = List.of();
	private Flaws shown = Flaws.of(ProjectState.EMPTY, Filter.OPEN);
	private final IPartListener2 parts = new IPartListener2() {
		@Override
		public void partActivated(IWorkbenchPartReference part) {
			if (onlyFile.isChecked() && part.getPart(false) instanceof IEditorPart) {
				filter(shown.filter().withFile(editedFile()));
			}
		}
	};

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().numColumns(2).spacing(4, 2).applyTo(parent);
		Composite head = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(2).margins(4, 2).applyTo(head);
		GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).applyTo(head);
		tone = new Label(head, SWT.NONE);
		GridDataFactory.fillDefaults().align(SWT.CENTER, SWT.BEGINNING).applyTo(tone);
		headline = new Label(head, SWT.WRAP);
		// asks for little, so that it takes what there is and wraps
		GridDataFactory.fillDefaults().grab(true, false).hint(100, SWT.DEFAULT).applyTo(headline);
		Text search = new Text(parent, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
		search.setMessage(ViewMessages.Search);
		Accessible.name(search, ViewMessages.Search);
		GridDataFactory.fillDefaults().hint(180, SWT.DEFAULT).applyTo(search);
		search.addModifyListener(event -> filter(shown.filter().withText(search.getText())));

		SashForm both = new SashForm(parent, SWT.HORIZONTAL);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).applyTo(both);
		tree = new TreeViewer(both, SWT.SINGLE | SWT.V_SCROLL | SWT.H_SCROLL);
		Accessible.name(tree.getControl(), ViewMessages.Flaws);
		tree.setUseHashlookup(true);
		tree.setComparer(new Same());
		tree.setContentProvider(new FlawsTree());
		tree.setLabelProvider(new FlawsLabels());
		ColumnViewerToolTipSupport.enableFor(tree);
		tree.addSelectionChangedListener(event -> tell(event.getStructuredSelection().getFirstElement()));
		tree.addDoubleClickListener(event -> go());
		details = new Details(both, ViewMessages.FlawDetails, this::open);
		looking = new Latest(ViewMessages.WhatCouldBeDone, both);
		both.setWeights(55, 45);

		fillToolBar(getViewSite().getActionBars().getToolBarManager());
		MenuManager menu = new MenuManager();
		menu.setRemoveAllWhenShown(true);
		menu.addMenuListener(this::fill);
		tree.getControl().setMenu(menu.createContextMenu(tree.getControl()));
		getSite().registerContextMenu(menu, tree);
		getSite().setSelectionProvider(tree);
		getSite().getPage().addPartListener(parts);
		refresh();
	}

	private void fill(IMenuManager menu) {
		menu.add(action(ViewMessages.GoToPlace, Icon.OPEN.descriptor(), this::go));
		menu.add(action(ViewMessages.ExplainKind, Icon.HELP.descriptor(), this::explain));
		Item item = chosen();
		if (item != null && !fixes.isEmpty()) {
			menu.add(new Separator());
			fixes.forEach(fix -> menu.add(action(fix.replace("@", "@@"), Icon.SKELETON.descriptor(), () -> offer(item, fix))));
		}
	}

	private void fillToolBar(IToolBarManager bar) {
		bar.add(severity(ViewMessages.Errors, Icon.ERROR, Severity.ERROR));
		bar.add(severity(ViewMessages.Warnings, Icon.WARNING, Severity.WARNING));
		bar.add(severity(ViewMessages.Notes, Icon.INFO, Severity.NOTE));
		bar.add(toggle(ViewMessages.Accepted, Icon.ACCEPTED.descriptor(), false, on -> filter(shown.filter().withAccepted(on))));
		onlyFile = toggle(ViewMessages.OnlyThisFile, Icon.FILE.descriptor(), false,
				on -> filter(shown.filter().withFile(on ? editedFile() : Optional.empty())));
		bar.add(onlyFile);
		bar.add(action(ViewMessages.ExplainKind, Icon.HELP.descriptor(), this::explain));
	}

	private Action severity(String text, Icon icon, Severity severity) {
		return toggle(text, icon.descriptor(), true, on -> filter(shown.filter().with(severity, on)));
	}

	private Optional<String> editedFile() {
		IEditorPart editor = getSite().getPage().getActiveEditor();
		IFile file = editor == null ? null : Adapters.adapt(editor.getEditorInput(), IFile.class);
		return Optional.ofNullable(file).map(found -> found.getProjectRelativePath().toPortableString());
	}

	@Override
	protected void show(ProjectState state) {
		shown = shown.with(state);
		refresh();
	}

	/** Remembers the kinds that the reader has folded, so that they stay so. */
	private void noteFolded() {
		if (tree.getInput() instanceof Flaws before) {
			before.groups().forEach(group -> {
				if (tree.getExpandedState(group)) {
					folded.remove(group.kind());
				} else {
					folded.add(group.kind());
				}
			});
		}
	}

	private void filter(Filter filter) {
		shown = shown.with(filter);
		refresh();
	}

	private void refresh() {
		Object before = tree.getStructuredSelection().getFirstElement();
		headline.setText(shown.headline().replace("&", "&&"));
		tone.setImage(icon(shown.tone()).image());
		headline.requestLayout();
		tree.getControl().setRedraw(false);
		noteFolded();
		tree.setInput(shown);
		if (shown.groups().stream().mapToInt(group -> group.items().size()).sum() <= MANY) {
			shown.groups().stream().filter(group -> !folded.contains(group.kind()))
					.forEach(group -> tree.setExpandedState(group, true));
		}
		if (before instanceof Item item) {
			shown.find(item.id()).ifPresent(found -> tree.setSelection(new StructuredSelection(found), true));
		}
		tree.getControl().setRedraw(true);
		tell(tree.getStructuredSelection().getFirstElement());
	}

	private static Icon icon(Tone tone) {
		return switch (tone) {
		case GOOD -> Icon.PASSED;
		case UNKNOWN -> Icon.UNDECIDED;
		case WARNED -> Icon.WARNING;
		case WRONG -> Icon.ERROR;
		};
	}

	private void tell(Object chosen) {
		details.begin();
		looking.cancel();
		fixes = List.of();
		Item only = chosen();
		if (only != null) {
			tell(only);
		} else if (chosen instanceof Group group) {
			details.heading(group.title());
			group.items().forEach(item -> details.link(new Link(item.message(), item.place().span())));
		} else {
			details.line(shown.groups().isEmpty() ? shown.emptyText() : ViewMessages.ChooseFlaw);
		}
		details.end();
	}

	/** Returns what is told: the flaw that is chosen, or the only one of the kind that is. */
	private Item chosen() {
		Object chosen = tree.getStructuredSelection().getFirstElement();
		return chosen instanceof Item item ? item : chosen instanceof Group group && group.items().size() == 1 ? group.items().get(0) : null;
	}

	private void tell(Item item) {
		tell(item, item.fixes());
		ActiveProject.of(getSite().getWorkbenchWindow()).project().filter(project -> item.fixes().isEmpty()).ifPresent(project -> looking.run(
				cancelled -> Resolutions.titles(project, item.place().span(), item.about()), titles -> {
					if (!titles.isEmpty() && chosen() == item) {
						details.begin();
						tell(item, titles);
						details.end();
					}
				}));
	}

	private void tell(Item item, List<String> titles) {
		fixes = titles;
		details.heading(item.message()).link(item.place()).line(item.advice());
		item.evidence().ifPresent(evidence -> {
			details.heading(evidence.title());
			evidence.lines().forEach(details::link);
		});
		if (!item.related().isEmpty()) {
			details.heading(ViewMessages.SeeAlso);
			item.related().forEach(details::link);
		}
		item.accepted().ifPresent(reason -> details.heading(ViewMessages.AcceptedBecause).line(reason));
		if (!fixes.isEmpty()) {
			details.heading(ViewMessages.WhatCouldBeDone);
			fixes.forEach(fix -> details.link(fix, () -> offer(item, fix)));
		}
		if (item.hasHelp()) {
			details.heading(ViewMessages.MoreAboutIt).link(item.kind(), () -> Help.show(item.kind()));
		}
	}

	private void offer(Item item, String fix) {
		ActiveProject.of(getSite().getWorkbenchWindow()).project().ifPresent(
				project -> Resolutions.offer(getSite().getShell(), project, item.place().span(), item.about(), fix));
	}

	private void go() {
		Object chosen = tree.getStructuredSelection().getFirstElement();
		if (chosen instanceof Item item) {
			open(item.place().span());
		} else if (chosen instanceof Group group) {
			tree.setExpandedState(group, !tree.getExpandedState(group));
		}
	}

	private void explain() {
		Object chosen = tree.getStructuredSelection().getFirstElement();
		String kind = chosen instanceof Item item ? item.kind() : chosen instanceof Group group ? group.kind() : "";
		Help.show(kind.isEmpty() ? Help.START : kind);
	}

	@Override
	public void dispose() {
		getSite().getPage().removePartListener(parts);
		super.dispose();
	}

	@Override
	public void setFocus() {
		tree.getControl().setFocus();
	}
}
