package org.baywright.workbench.view.bench;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.JobRule;
import org.baywright.presenter.bench.Lacking;
import org.baywright.presenter.bench.Trial;
import org.baywright.workbench.DropDown;
import org.baywright.workbench.preference.Preferences;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.project.Places;
import org.baywright.workbench.view.Latest;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.IMessageProvider;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Drafts the rule that a job teaches: which test decided, what the cause was, and what becomes of all other rules with it. */
public final class DraftDialog extends TitleAreaDialog {

	private static final int WIDE = 560;
	private static final int LINES = 12;

	private final IProject project;
	private final List<JobRule.Choice> tests;
	private final List<JobRule.Choice> causes;
	private final BiFunction<String, String, JobRule> made;
	private final Function<String, Lacking> lacking;
	private final String cause;
	private final String file;
	private final Trial trial = new Trial();
	private Combo test;
	private Combo fault;
	private Text lacks;
	private Text preview;
	private Text outcome;
	private Latest trying;

	private DraftDialog(Shell shell, IProject project, RuleBase base, List<Reading> readings, String cause, BiFunction<String, String, JobRule> made,
			Function<String, Lacking> lacking) {
		super(shell);
		this.project = project;
		this.cause = cause;
		this.made = made;
		this.lacking = lacking;
		tests = JobRule.tests(base, readings);
		causes = JobRule.faults(base);
		file = JobRule.file(base, readings);
		setShellStyle(getShellStyle() | SWT.RESIZE);
	}

	/** Drafts a rule from the job on a bench. */
	public static void open(Shell shell, IProject project, Bench bench, Advice advice) {
		String author = Preferences.author();
		new DraftDialog(shell, project, bench.base(), bench.now().readings(), bench.now().done().cause(),
				(test, cause) -> JobRule.of(bench, test, cause, author, LocalDate.now()), cause -> Lacking.of(bench, advice, cause)).open();
	}

	/** Drafts a rule from a finished job. */
	public static void open(Shell shell, IProject project, RuleBase base, CaseResult result) {
		String author = Preferences.author();
		new DraftDialog(shell, project, base, result.job().found(), result.job().causes().stream().findFirst().orElse(""),
				(test, cause) -> JobRule.of(base, result.job(), test, cause, author, LocalDate.now()), cause -> Lacking.of(base, result)).open();
	}

	@Override
	public void create() {
		super.create();
		getShell().setText(BenchMessages.Draft);
		setTitle(BenchMessages.Draft);
		tell();
	}

	@Override
	protected Control createDialogArea(Composite parent) {
		Composite area = new Composite((Composite) super.createDialogArea(parent), SWT.NONE);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(area);
		GridLayoutFactory.swtDefaults().numColumns(2).applyTo(area);
		test = combo(area, BenchMessages.DecidingTest, tests);
		fault = combo(area, BenchMessages.Cause, causes);
		if (!tests.isEmpty()) {
			test.select(0);
		}
		int known = causes.stream().map(JobRule.Choice::name).toList().indexOf(cause);
		if (known >= 0) {
			fault.select(known);
		}
		lacks = text(area, 5, false);
		preview = text(area, LINES, true);
		preview.setFont(JFaceResources.getTextFont());
		outcome = text(area, 4, false);
		trying = new Latest(BenchMessages.Working, preview);
		return area;
	}

	private Combo combo(Composite parent, String label, List<JobRule.Choice> choices) {
		new Label(parent, SWT.NONE).setText(label);
		Combo combo = DropDown.of(parent, label);
		combo.setItems(choices.stream().map(JobRule.Choice::title).toArray(String[]::new));
		GridDataFactory.fillDefaults().grab(true, false).hint(WIDE, SWT.DEFAULT).applyTo(combo);
		combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> tell()));
		return combo;
	}

	private static Text text(Composite parent, int lines, boolean grows) {
		Text text = new Text(parent, SWT.MULTI | SWT.READ_ONLY | SWT.BORDER | SWT.WRAP | SWT.V_SCROLL);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, grows).hint(WIDE, lines * text.getLineHeight()).applyTo(text);
		return text;
	}

	private Optional<JobRule> chosen() {
		return test.getSelectionIndex() < 0 || fault.getSelectionIndex() < 0 ? Optional.empty()
				: Optional.of(made.apply(tests.get(test.getSelectionIndex()).name(), causes.get(fault.getSelectionIndex()).name()));
	}

	private void tell() {
		Button ok = getButton(IDialogConstants.OK_ID);
		String fault = this.fault.getSelectionIndex() < 0 ? "" : causes.get(this.fault.getSelectionIndex()).name();
		lacks.setText(fault.isEmpty() ? "" : said(lacking.apply(fault)));
		Optional<String> problem = tests.isEmpty() ? Optional.of(BenchMessages.NoTest)
				: chosen().map(JobRule::problem).orElse(Optional.of(BenchMessages.ChooseCause));
		ok.setEnabled(problem.isEmpty());
		setMessage(problem.orElse(BenchMessages.DraftHint));
		outcome.setText(problem.isPresent() ? "" : BenchMessages.Working);
		preview.setText(problem.isPresent() ? "" : chosen().map(JobRule::text).orElse(""));
		if (problem.isEmpty()) {
			JobRule rule = chosen().get();
			trying.run(cancelled -> trial.of(rule, listener(cancelled)), this::tell);
		}
	}

	private void tell(Trial.Result result) {
		setMessage(BenchMessages.DraftHint, result.fits() ? IMessageProvider.NONE : IMessageProvider.WARNING);
		outcome.setText(Stream.concat(Stream.of(result.headline()), result.added().stream().map(Flaw::message)).collect(Collectors.joining("\n")));
	}

	private static String said(Lacking lacking) {
		StringBuilder text = new StringBuilder(lacking.headline());
		lacking.rules().forEach(rule -> {
			text.append('\n').append(rule.title());
			rule.lines().forEach(line -> text.append("\n    ").append(line.text()));
		});
		return text.toString();
	}

	private static Listener listener(BooleanSupplier cancelled) {
		return new Listener() {
			@Override
			public boolean isCancelled() {
				return cancelled.getAsBoolean();
			}
		};
	}

	/** Puts the draft into its file, which opens with the first blank chosen and is not saved. */
	@Override
	protected void okPressed() {
		JobRule rule = chosen().orElseThrow();
		IFile to = project.getFile(IPath.fromPortableString(file));
		try {
			// what an editor has open can be undone, and is saved by who has read it
			if (to.exists()) {
				Places.open(to, 0, 0, true);
			}
			int offset = FileEdits.type(to, rule.text());
			super.okPressed();
			JobRule.Blank blank = rule.blanks().isEmpty() ? new JobRule.Blank(0, 0) : rule.blanks().get(0);
			Places.open(to, offset + blank.offset(), blank.length(), true);
		} catch (CoreException e) {
			ErrorDialog.openError(getShell(), BenchMessages.Draft, BenchMessages.NotDrafted, e.getStatus());
		}
	}
}
