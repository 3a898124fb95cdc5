package org.baywright.workbench.view.grid;

import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.grid.Grid;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.DropDown;
import org.baywright.workbench.Icon;
import org.baywright.workbench.view.Exporting;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.ScopeBar;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;

/** Shows which result of which test says what about which fault. */
public final class GridView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.grid";

	private ScopeBar scope;
	private Combo order;
	private Label summary;
	private GridTable table;
	private Latest making;
	private Grid grid;
	private ProjectState state = ProjectState.EMPTY;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().numColumns(2).spacing(4, 2).applyTo(parent);
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
		summary = new Label(parent, SWT.WRAP);
		summary.setText(GridMessages.Empty);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).indent(6, 0).applyTo(summary);
		table = new GridTable(parent, this::open);
		Accessible.name(table.control(), GridMessages.Name);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).applyTo(table.control());
		making = new Latest(GridMessages.Making, table.control());
		offer(getViewSite().getActionBars().getToolBarManager(), table.control(), action(GridMessages.Copy, Icon.COPY.descriptor(),
				() -> copy(parent, grid == null ? "" : grid.tsv(), GridMessages.Copied)),
				action(GridMessages.Save, Icon.EXPORT.descriptor(), this::save));
	}

	private Grid.Order order() {
		return Grid.Order.values()[Math.max(0, order.getSelectionIndex())];
	}

	private void save() {
		if (grid != null) {
			Exporting.toFile(getSite().getShell(), state.rules().name(), "tsv", grid.tsv());
		}
	}

	@Override
	protected void show(State now) {
		if (state.rules() != now.now().rules()) {
			scope.fill(now.now().rules());
		}
		state = now.now();
		make();
	}

	private void make() {
		ProjectState now = state;
		RuleScope wanted = scope.scope();
		Grid.Order sorted = order();
		making.run(cancelled -> Grid.of(now, wanted, sorted), this::show);
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
