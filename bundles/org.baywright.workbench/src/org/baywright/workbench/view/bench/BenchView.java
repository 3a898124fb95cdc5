package org.baywright.workbench.view.bench;

import java.util.List;
import java.util.function.BooleanSupplier;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.presenter.Link;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Benches;
import org.baywright.presenter.bench.CaseText;
import org.baywright.presenter.bench.Consulting;
import org.baywright.presenter.bench.Shown;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.Icon;
import org.baywright.workbench.view.Details;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IToolBarManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.layout.TableColumnLayout;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.actions.ActionFactory;

/** Tries the rules on one vehicle whose findings are entered one by one. */
public final class BenchView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.bench";

	/** Longer lists are cut in the view; the presenter has them all. */
	private static final int MOST = 60;

	private final Consulting consulting = new Consulting();
	private final Benches benches = new Benches();
	private Bench bench = Bench.of(new RuleBase.Builder("").build());
	private EntryBar entry;
	private Label message;
	private TableViewer table;
	private Details details;
	private Latest trying;
	private Action undo;
	private Action redo;
	private Action clear;
	private Action copy;
	private Shown shown;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
		entry = new EntryBar(parent, family -> set(bench.choose(family)), this::enter, this::hint);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(entry.control());
		message = new Label(parent, SWT.WRAP);
		GridDataFactory.fillDefaults().grab(true, false).indent(6, 0).applyTo(message);
		SashForm both = new SashForm(parent, SWT.VERTICAL);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(both);
		createTable(both);
		details = new Details(both, BenchMessages.Result, this::open);
		both.setWeights(30, 70);
		trying = new Latest(BenchMessages.Working, table.getControl());
		fillToolBar(getViewSite().getActionBars().getToolBarManager());
		details.begin().line(BenchMessages.Empty).end();
	}

	private void fillToolBar(IToolBarManager bar) {
		undo = action(BenchMessages.Undo, shared(ISharedImages.IMG_TOOL_UNDO), () -> set(bench.undo()));
		redo = action(BenchMessages.Redo, shared(ISharedImages.IMG_TOOL_REDO), () -> set(bench.redo()));
		clear = action(BenchMessages.Clear, Icon.RESET.descriptor(), () -> set(bench.clear()));
		copy = action(BenchMessages.CopyCase, Icon.COPY.descriptor(), this::copyCase);
		List.of(undo, redo, clear, copy).forEach(each -> {
			each.setEnabled(false);
			bar.add(each);
		});
		getViewSite().getActionBars().setGlobalActionHandler(ActionFactory.UNDO.getId(), undo);
		getViewSite().getActionBars().setGlobalActionHandler(ActionFactory.REDO.getId(), redo);
	}

	private static ImageDescriptor shared(String name) {
		return PlatformUI.getWorkbench().getSharedImages().getImageDescriptor(name);
	}

	private void createTable(Composite parent) {
		Composite holder = new Composite(parent, SWT.NONE);
		TableColumnLayout layout = new TableColumnLayout();
		holder.setLayout(layout);
		table = new TableViewer(holder, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
		table.getTable().setHeaderVisible(true);
		Accessible.name(table.getTable(), BenchMessages.Entered);
		table.setContentProvider(ArrayContentProvider.getInstance());
		column(layout, BenchMessages.Kind, 20, ColumnLabelProvider.createTextProvider(line -> ((Bench.Line) line).kind()));
		column(layout, BenchMessages.What, 50, ColumnLabelProvider.createTextProvider(line -> ((Bench.Line) line).title()));
		column(layout, BenchMessages.Value, 30, ColumnLabelProvider.createTextProvider(line -> ((Bench.Line) line).value()));
		table.addSelectionChangedListener(event -> {
			if (event.getStructuredSelection().getFirstElement() instanceof Bench.Line line && table.getTable().isFocusControl()) {
				entry.show(bench);
			}
		});
		table.addDoubleClickListener(event -> {
			if (table.getStructuredSelection().getFirstElement() instanceof Bench.Line line) {
				choose(line.variable());
			}
		});
		table.getTable().addKeyListener(KeyListener.keyPressedAdapter(event -> {
			if (event.keyCode == SWT.DEL) {
				remove();
			}
		}));
		MenuManager menu = new MenuManager();
		menu.add(onChosen(table, action(BenchMessages.Remove, shared(ISharedImages.IMG_TOOL_DELETE), this::remove)));
		table.getControl().setMenu(menu.createContextMenu(table.getControl()));
	}

	private void column(TableColumnLayout layout, String title, int weight, org.eclipse.jface.viewers.CellLabelProvider labels) {
		TableViewerColumn column = new TableViewerColumn(table, SWT.LEFT);
		column.getColumn().setText(title);
		column.setLabelProvider(labels);
		layout.setColumnData(column.getColumn(), new ColumnWeightData(weight, 50, true));
	}

	// ---- what is entered ---------------------------------------------------------------------------------------

	private void choose(Variable variable) {
		// what was said is of the entry before
		bench = bench.quiet();
		entry.choose(variable);
	}

	private void enter(Variable variable, String value) {
		set(bench.enter(variable, value));
	}

	private void remove() {
		if (table.getStructuredSelection().getFirstElement() instanceof Bench.Line line) {
			set(bench.remove(line.variable()));
		}
	}

	@Override
	protected void show(ProjectState state) {
		if (bench.base() != state.rules()) {
			set(benches.turn(bench, state.rules()));
		}
	}

	private void set(Bench next) {
		bench = next;
		entry.show(bench);
		say(bench.message());
		table.setInput(bench.lines());
		undo.setEnabled(bench.canUndo());
		redo.setEnabled(bench.canRedo());
		clear.setEnabled(!bench.now().readings().isEmpty());
		copy.setEnabled(false);
		Bench tried = bench;
		trying.run(cancelled -> consulting.show(tried, listener(cancelled)), this::tell);
	}

	/** What to do next, unless something is to be said of the last entry. */
	private void hint(String prompt) {
		if (bench.message().isEmpty()) {
			say(prompt);
		}
	}

	private void say(String text) {
		message.setText(text.replace("&", "&&"));
		message.requestLayout();
	}

	private static Listener listener(BooleanSupplier cancelled) {
		return new Listener() {
			@Override
			public boolean isCancelled() {
				return cancelled.getAsBoolean();
			}
		};
	}

	private void copyCase() {
		copy(table.getControl(), CaseText.of(bench, shown.advice(), BenchMessages.NewJob), BenchMessages.CaseCopied);
	}

	// ---- what the rules make of it -----------------------------------------------------------------------------

	private void tell(Shown now) {
		shown = now;
		copy.setEnabled(!bench.now().family().isEmpty());
		details.begin();
		if (!now.precautions().isEmpty()) {
			details.heading(BenchMessages.First);
			now.precautions().forEach(details::link);
		}
		details.heading(now.headline());
		if (!now.warnings().isEmpty()) {
			details.heading(BenchMessages.Warnings);
			now.warnings().forEach(details::link);
		}
		if (!now.verdicts().isEmpty()) {
			details.heading(BenchMessages.Verdicts);
			now.verdicts().forEach(verdict -> {
				details.line(verdict.text());
				verdict.rules().forEach(details::link);
			});
		}
		if (!now.steps().isEmpty()) {
			details.heading(BenchMessages.Next);
			now.steps().stream().limit(MOST / 6).forEach(step -> {
				String effort = step.effort().isEmpty() ? "" : " (" + step.effort() + ")";
				details.link(step.subject().title() + effort, () -> choose(step.subject().variable()));
				details.link(new Link(step.reason(), Span.NONE));
				step.pictures().forEach(details::link);
			});
		}
		tell(BenchMessages.Fired, now.fired());
		tell(BenchMessages.Waiting, now.open());
		tell(BenchMessages.Unsure, now.unsure());
		tell(BenchMessages.Never, now.never());
		details.end();
	}

	private void tell(String title, List<Shown.RuleLine> rules) {
		if (!rules.isEmpty()) {
			details.heading(NLS.bind(title, rules.size()));
			rules.stream().limit(MOST).forEach(rule -> {
				details.link(new Link(rule.title(), rule.span()));
				rule.lines().forEach(line -> details.link(line));
			});
			if (rules.size() > MOST) {
				details.line("…");
			}
		}
	}

	@Override
	public void setFocus() {
		entry.setFocus();
	}
}
