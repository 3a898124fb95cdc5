package org.baywright.workbench.view.cases;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Jobs;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.presenter.Link;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.cases.Cases;
import org.baywright.presenter.cases.Job;
import org.baywright.presenter.cases.Tally;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.Icon;
import org.baywright.workbench.view.Details;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.bench.DraftDialog;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IToolBarManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.layout.TableColumnLayout;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Shows which finished jobs the rules bring to their known end, and why others fail. */
public final class CasesView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.cases";

	private Label headline;
	private TableViewer table;
	private Details details;
	private Latest running;
	private Action run;
	private Cases cases = Cases.NONE;
	private Cases.Filter filter = Cases.Filter.ALL;
	private RuleBase base;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().numColumns(2).spacing(4, 2).applyTo(parent);
		headline = new Label(parent, SWT.NONE);
		headline.setText(CasesMessages.Empty);
		GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).indent(6, 0).applyTo(headline);
		Text search = new Text(parent, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
		search.setMessage(CasesMessages.Search);
		Accessible.name(search, CasesMessages.Search);
		GridDataFactory.fillDefaults().hint(180, SWT.DEFAULT).applyTo(search);
		search.addModifyListener(event -> filter(new Cases.Filter(filter.failingOnly(), search.getText())));

		SashForm both = new SashForm(parent, SWT.HORIZONTAL);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).applyTo(both);
		createTable(both);
		details = new Details(both, CasesMessages.Details, this::open);
		both.setWeights(68, 32);
		running = new Latest(CasesMessages.Running, table.getControl());

		IToolBarManager bar = getViewSite().getActionBars().getToolBarManager();
		run = action(CasesMessages.Run, Icon.CHECK.descriptor(), this::run);
		run.setEnabled(false);
		bar.add(run);
		bar.add(toggle(CasesMessages.FailingOnly, Icon.FAILED.descriptor(), false,
				on -> filter(new Cases.Filter(on, filter.text()))));
		MenuManager menu = new MenuManager();
		menu.add(onChosen(table, action(CasesMessages.GoTo, Icon.OPEN.descriptor(), this::go)));
		menu.add(onChosen(table, action(CasesMessages.Draft, Icon.RULE.descriptor(), this::draft)));
		table.getControl().setMenu(menu.createContextMenu(table.getControl()));
	}

	private void createTable(Composite parent) {
		Composite holder = new Composite(parent, SWT.NONE);
		TableColumnLayout layout = new TableColumnLayout();
		holder.setLayout(layout);
		// not SWT.VIRTUAL: styled, such a table makes entries twice and forgets one, and the next change of the theme ends Java
		table = new TableViewer(holder, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
		table.getTable().setHeaderVisible(true);
		Accessible.name(table.getTable(), CasesMessages.Name);
		table.setContentProvider(ArrayContentProvider.getInstance());
		column(layout, CasesMessages.Job, 30, Job::name, true);
		column(layout, CasesMessages.Vehicle, 20, Job::family, false);
		column(layout, CasesMessages.Signs, 25, job -> String.join(", ", job.signs()), false);
		column(layout, CasesMessages.End, 25, Job::end, false);
		table.addSelectionChangedListener(event -> tell());
		table.addDoubleClickListener(event -> go());
	}

	private void column(TableColumnLayout layout, String title, int weight, Function<Job, String> text, boolean pictured) {
		TableViewerColumn column = new TableViewerColumn(table, SWT.LEFT);
		column.getColumn().setText(title);
		column.setLabelProvider(new ColumnLabelProvider() {
			@Override
			public String getText(Object element) {
				return text.apply((Job) element);
			}

			@Override
			public Image getImage(Object element) {
				return !pictured ? null : (((Job) element).passed() ? Icon.PASSED : Icon.FAILED).image();
			}
		});
		layout.setColumnData(column.getColumn(), new ColumnWeightData(weight, 60, true));
	}

	@Override
	protected void show(ProjectState state) {
		base = state.checked();
		run.setEnabled(!base.cases().isEmpty());
		RuleBase rules = base;
		state.report().ifPresentOrElse(report -> running.run(cancelled -> Cases.of(rules, report.cases(), filter), this::show),
				() -> headline.setText(Cases.NONE.headline()));
	}

	/** Runs the jobs through the rules without checking the rules again. */
	private void run() {
		RuleBase rules = base;
		running.run(cancelled -> Cases.of(rules, Jobs.run(rules, listener(cancelled)), filter), this::show);
	}

	private Listener listener(BooleanSupplier cancelled) {
		return new Listener() {
			@Override
			public boolean isCancelled() {
				return cancelled.getAsBoolean();
			}

			@Override
			public void progress(int done, int total) {
				String text = NLS.bind(CasesMessages.RanProgress, done, total);
				if (!headline.isDisposed() && (done == total || done % 50 == 0)) {
					headline.getDisplay().asyncExec(() -> {
						if (!headline.isDisposed() && !cancelled.getAsBoolean()) {
							headline.setText(text);
						}
					});
				}
			}
		};
	}

	private void filter(Cases.Filter other) {
		filter = other;
		show(cases);
	}

	private void show(Cases made) {
		cases = made.with(filter);
		headline.setText(cases.headline().replace("&", "&&"));
		table.setInput(cases.shown());
		tell();
	}

	private void tell() {
		details.begin();
		if (table.getStructuredSelection().getFirstElement() instanceof Job job) {
			tell(job);
		} else if (!cases.all().isEmpty() && cases.shown().isEmpty()) {
			details.line(CasesMessages.Hidden);
		} else {
			tell(CasesMessages.ByVehicle, cases.families());
			tell(CasesMessages.BySign, cases.signs());
		}
		details.end();
	}

	private void tell(String title, List<Tally> tallies) {
		if (!tallies.isEmpty()) {
			details.heading(title);
			tallies.forEach(tally -> details.link(new Link(tally.text(), Span.NONE)));
		}
	}

	private void tell(Job job) {
		details.heading(job.name()).link(job.place());
		if (!job.passed()) {
			details.heading(CasesMessages.WhyItFails).line(job.message()).link(CasesMessages.Draft, this::draft);
		}
		tellLinks(CasesMessages.Decided, job.decided());
		tellLinks(CasesMessages.Verdicts, job.verdicts().stream().map(text -> new Link(text, Span.NONE)).toList());
		tellLinks(CasesMessages.Fired, job.fired());
		if (job.fired().isEmpty()) {
			details.line(CasesMessages.NothingFired);
		}
	}

	private void tellLinks(String title, List<Link> links) {
		if (!links.isEmpty()) {
			details.heading(title);
			links.forEach(details::link);
		}
	}

	private void go() {
		if (table.getStructuredSelection().getFirstElement() instanceof Job job) {
			open(job.place().span());
		}
	}

	private void draft() {
		if (table.getStructuredSelection().getFirstElement() instanceof Job job) {
			project().ifPresent(project -> DraftDialog.open(getSite().getShell(), project, base, job.result()));
		}
	}

	@Override
	public void setFocus() {
		table.getControl().setFocus();
	}
}
