package org.baywright.workbench.view.grid;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.BiConsumer;

import org.baywright.language.ide.grid.CellForm;
import org.baywright.language.ide.grid.Pasting;
import org.baywright.language.workspace.Snapshot;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.grid.Grid;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.DropDown;
import org.baywright.workbench.Icon;
import org.baywright.workbench.preference.Preferences;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.RuleProjects;
import org.baywright.workbench.view.Exporting;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.ScopeBar;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.PlatformUI;

/** Shows which result of which test says what about which fault. */
public final class GridView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.grid";

	private ScopeBar scope;
	private Combo order;
	private Button unused;
	private Label summary;
	private GridTable table;
	private Latest making;
	private Latest opening;
	private Grid grid;
	private ProjectState state = ProjectState.EMPTY;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().numColumns(3).spacing(4, 2).applyTo(parent);
		scope = new ScopeBar(parent, false, chosen -> make());
		GridDataFactory.fillDefaults().grab(true, false).applyTo(scope.control());
		order = DropDown.of(parent, GridMessages.Order);
		order.setItems(GridMessages.ByCost, GridMessages.ByTime, GridMessages.ByTitle);
		order.select(0);
		GridDataFactory.fillDefaults().align(SWT.END, SWT.CENTER).applyTo(order);
		order.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			if (grid != null) {
				show(grid.sorted(order()));
			}
		}));
		unused = new Button(parent, SWT.CHECK);
		unused.setText(GridMessages.Unused);
		GridDataFactory.fillDefaults().align(SWT.END, SWT.CENTER).applyTo(unused);
		unused.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> make()));
		summary = new Label(parent, SWT.WRAP);
		summary.setText(GridMessages.Empty);
		GridDataFactory.fillDefaults().span(3, 1).grab(true, false).indent(6, 0).applyTo(summary);
		table = new GridTable(parent, this::open, new Keys());
		Accessible.name(table.control(), GridMessages.Name);
		GridDataFactory.fillDefaults().span(3, 1).grab(true, true).applyTo(table.control());
		making = new Latest(GridMessages.Making, table.control());
		opening = new Latest(GridMessages.Making, table.control());
		ISharedImages shared = PlatformUI.getWorkbench().getSharedImages();
		offer(getViewSite().getActionBars().getToolBarManager(), table.control(),
				action(GridMessages.Edit, Icon.SKELETON.descriptor(), this::edit),
				action(GridMessages.SayNothing, shared.getImageDescriptor(ISharedImages.IMG_ETOOL_DELETE), this::empty),
				action(GridMessages.Paste, shared.getImageDescriptor(ISharedImages.IMG_TOOL_PASTE), this::paste),
				action(GridMessages.Copy, Icon.COPY.descriptor(),
				() -> copy(parent, grid == null ? "" : grid.tsv(), GridMessages.Copied)),
				action(GridMessages.Save, Icon.EXPORT.descriptor(), this::save));
	}

	private Grid.Order order() {
		return Grid.Order.values()[Math.max(0, order.getSelectionIndex())];
	}

	// ---- edit ------------------------------------------------------------------------------------------------------

	private final class Keys implements GridTable.Hears {
		@Override
		public void edit() {
			GridView.this.edit();
		}

		@Override
		public void empty() {
			GridView.this.empty();
		}

		@Override
		public void paste() {
			GridView.this.paste();
		}
	}

	private void edit() {
		form((project, form) -> {
			CellDialog dialog = new CellDialog(getSite().getShell(), form);
			if (dialog.open() == Window.OK) {
				GridWriter.write(getSite().getShell(), project, form.snapshot(), dialog.edit());
			}
		});
	}

	private void empty() {
		form((project, form) -> {
			var asked = form.emptied();
			opening.run(cancelled -> asked.get(), edit -> {
				String locked = String.join("\n", form.locked());
				if (edit.isEmpty()) {
					MessageDialog.openInformation(getSite().getShell(), GridMessages.SayNothing, locked.isEmpty() ? GridMessages.SaysNothing : locked);
				} else if (MessageDialog.openConfirm(getSite().getShell(), GridMessages.SayNothing,
						GridMessages.SayNothingAsk + "\n\n" + edit.preview() + (locked.isEmpty() ? "" : "\n" + locked))) {
					GridWriter.write(getSite().getShell(), project, form.snapshot(), edit);
				}
			});
		});
	}

	private void paste() {
		Optional<OpenProject> open = project().map(RuleProjects::of);
		Optional<Snapshot> texts = open.flatMap(of -> of.state().texts());
		String text = Exporting.fromClipboard(getSite().getShell().getDisplay());
		if (text.isBlank()) {
			MessageDialog.openInformation(getSite().getShell(), GridMessages.Paste, GridMessages.PasteEmpty);
		} else if (texts.isPresent() && grid != null) {
			RuleScope shown = scope.scope();
			Grid now = grid;
			int row = table.chosen().map(cell -> now.rows().indexOf(cell.row())).orElse(0);
			int column = table.chosen().map(cell -> now.columns().indexOf(cell.column())).orElse(0);
			opening.run(cancelled -> new Pasting(texts.get(), shown.rules(texts.get().rules()),
					now.rows().stream().map(each -> new Pasting.Head(each.test(), each.title())).toList(),
					now.columns().stream().map(each -> new Pasting.Head(each.fault(), each.title())).toList(),
					(line, field) -> now.rows().get(line).cells().get(field).text()).read(text, row, column), pasted -> {
						PasteDialog dialog = new PasteDialog(getSite().getShell(), pasted, shown.family());
						if (dialog.open() == Window.OK) {
							GridWriter.write(getSite().getShell(), open.get(), pasted.snapshot(), dialog.edit());
						}
					});
		}
	}

	/** Reads what can be chosen for the cell that is chosen, aside. */
	private void form(BiConsumer<OpenProject, CellForm> then) {
		Optional<OpenProject> open = project().map(RuleProjects::of);
		Optional<Snapshot> texts = open.flatMap(of -> of.state().texts());
		Optional<GridTable.Chosen> cell = table.chosen();
		if (cell.isEmpty()) {
			MessageDialog.openInformation(getSite().getShell(), GridMessages.EditTitle, GridMessages.ChooseCell);
		} else if (texts.isPresent()) {
			RuleScope shown = scope.scope();
			String author = Preferences.author();
			opening.run(cancelled -> new CellForm(texts.get(), shown.rules(texts.get().rules()), shown.family(), cell.get().row().test(),
					cell.get().column().fault(), author, LocalDate.now()), form -> then.accept(open.get(), form));
		}
	}

	private void save() {
		if (grid != null) {
			Exporting.toFile(getSite().getShell(), state.rules().name(), "tsv", grid.tsv());
		}
	}

	@Override
	protected void show(ProjectState now) {
		if (state.rules() != now.rules()) {
			scope.fill(now.rules());
		}
		state = now;
		make();
	}

	private void make() {
		ProjectState now = state;
		RuleScope wanted = scope.scope();
		Grid.Order sorted = order();
		boolean all = unused.getSelection();
		making.run(cancelled -> Grid.of(now, wanted, sorted, all), this::show);
	}

	private void show(Grid made) {
		// the order may have been chosen anew while this one was made
		grid = made.sorted(order());
		summary.setText(made.summary().replace("&", "&&"));
		summary.setToolTipText(made.summary());
		table.show(grid);
		summary.requestLayout();
	}

	@Override
	public void setFocus() {
		table.control().setFocus();
	}
}
