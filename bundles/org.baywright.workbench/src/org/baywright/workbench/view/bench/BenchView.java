package org.baywright.workbench.view.bench;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.presenter.Left;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.bench.Ask;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.CaseText;
import org.baywright.presenter.bench.Consulting;
import org.baywright.presenter.bench.JobSheet;
import org.baywright.presenter.bench.Keeping;
import org.baywright.presenter.bench.Mending;
import org.baywright.presenter.bench.Paragraph;
import org.baywright.presenter.bench.Shown;
import org.baywright.workbench.Icon;
import org.baywright.workbench.pack.SheetLauncher;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.view.Details;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IToolBarManager;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.actions.ActionFactory;

/** Leads a job from the complaint to the verified repair: one thing to do at a time, and why that. */
public final class BenchView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.bench";

	private final Consulting consulting = new Consulting();
	private final Left<Bench> left = new Left<>(Bench::base, Bench::of, Bench::turn);
	private Bench bench = Bench.of(new RuleBase.Builder("").build());
	private AskBar bar;
	private Label message;
	private Details details;
	private Teller teller;
	private Latest trying;
	private Latest checking;
	private Action undo;
	private Action redo;
	private Action clear;
	private Action sheet;
	private Action keep;
	private Action draft;
	private Action copy;
	private Shown shown;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
		bar = new AskBar(parent, family -> set(bench.choose(family)), this::answer, variable -> set(bench.remove(variable)), this::hint, subject -> teller.tell(bench, subject));
		GridDataFactory.fillDefaults().grab(true, false).applyTo(bar.control());
		message = new Label(parent, SWT.WRAP);
		GridDataFactory.fillDefaults().grab(true, false).indent(6, 0).hint(60, SWT.DEFAULT).applyTo(message);
		details = new Details(parent, BenchMessages.Result, this::open);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(details.control());
		teller = new Teller(details, new Follower(), () -> tell(shown));
		trying = new Latest(BenchMessages.Working, details.control());
		checking = new Latest(BenchMessages.Working, details.control());
		fillToolBar(getViewSite().getActionBars().getToolBarManager());
		details.begin().line(BenchMessages.Empty).end();
	}

	private void fillToolBar(IToolBarManager tools) {
		undo = action(BenchMessages.Undo, shared(ISharedImages.IMG_TOOL_UNDO), () -> set(bench.undo()));
		redo = action(BenchMessages.Redo, shared(ISharedImages.IMG_TOOL_REDO), () -> set(bench.redo()));
		clear = action(BenchMessages.Clear, Icon.RESET.descriptor(), () -> set(bench.clear()));
		sheet = action(BenchMessages.Sheet, shared(ISharedImages.IMG_ETOOL_PRINT_EDIT), this::showSheet);
		keep = action(BenchMessages.Keep, shared(ISharedImages.IMG_ETOOL_SAVE_EDIT), this::keep);
		draft = action(BenchMessages.Draft, shared(ISharedImages.IMG_TOOL_NEW_WIZARD), this::draft);
		copy = action(BenchMessages.CopyCase, Icon.COPY.descriptor(), this::copyCase);
		List.of(undo, redo, clear, sheet, keep, draft, copy).forEach(each -> {
			each.setEnabled(false);
			tools.add(each);
		});
		getViewSite().getActionBars().setGlobalActionHandler(ActionFactory.UNDO.getId(), undo);
		getViewSite().getActionBars().setGlobalActionHandler(ActionFactory.REDO.getId(), redo);
	}

	private static ImageDescriptor shared(String name) {
		return PlatformUI.getWorkbench().getSharedImages().getImageDescriptor(name);
	}

	// ---- what is entered ---------------------------------------------------------------------------------------

	private void choose(Variable variable) {
		// what was said is of the entry before
		bench = bench.quiet();
		bar.choose(variable);
	}

	private void answer(Ask ask, String text) {
		switch (ask.special()) {
		case KEEP -> keep();
		case DRAFT -> draft();
		default -> take(ask.answer(bench, text));
		}
	}

	/** What was refused is asked again. */
	private void take(Bench next) {
		if (next.now().equals(bench.now()) && !next.message().isEmpty()) {
			bench = next;
			say(next.message());
			bar.setFocus();
		} else {
			set(next);
		}
	}

	@Override
	protected void show(ProjectState state) {
		if (bench.base() != state.rules()) {
			set(left.turn(bench, state.rules()));
		}
	}

	private void set(Bench next) {
		bench = next;
		bar.show(bench);
		say(bench.message());
		undo.setEnabled(bench.canUndo());
		redo.setEnabled(bench.canRedo());
		clear.setEnabled(!bench.now().readings().isEmpty());
		List.of(sheet, keep, draft, copy).forEach(each -> each.setEnabled(false));
		Bench tried = bench;
		trying.run(cancelled -> consulting.follow(tried, listener(cancelled)), this::tell);
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

	private void tell(Consulting.Followed followed) {
		if (!followed.noted().isEmpty()) {
			bench = followed.bench();
			bar.show(bench);
			say(bench.message());
		}
		tell(followed.shown());
	}

	private void tell(Shown now) {
		shown = now;
		boolean begun = !bench.now().readings().isEmpty();
		List.of(sheet, copy, draft).forEach(each -> each.setEnabled(begun));
		keep.setEnabled(now.mending().filter(mending -> mending.isEnded()).isPresent());
		bar.ask(Ask.of(bench, now));
		teller.tell(bench, now);
	}

	// ---- what becomes of the job -------------------------------------------------------------------------------

	private void copyCase() {
		copy(details.control(), CaseText.of(bench, shown.advice(), BenchMessages.NewJob), BenchMessages.CaseCopied);
	}

	private void keep() {
		Keeping keeping = Keeping.of(bench, shown.advice(), LocalDate.now());
		Optional<String> problem = keeping.problem();
		if (problem.isPresent() || project().isEmpty()) {
			problem.ifPresent(this::say);
			return;
		}
		boolean verified = shown.mending().filter(mending -> mending.stage() == Mending.Stage.VERIFIED || mending.stage() == Mending.Stage.REFERRED).isPresent();
		if (!verified && !MessageDialog.openQuestion(getSite().getShell(), BenchMessages.Keep, BenchMessages.NotVerified)) {
			return;
		}
		IFile file = project().get().getFile(IPath.fromPortableString(keeping.file()));
		try {
			Keeping free = keeping.unlike(FileEdits.text(file));
			FileEdits.append(file, free.text());
			String told = NLS.bind(FileEdits.isUnsaved(file) ? BenchMessages.KeptUnsaved : BenchMessages.Kept, free.name(), free.file());
			Bench over = bench.startOver(told);
			set(over);
			checking.run(cancelled -> free.failure(listener(cancelled)), failure -> {
				if (!failure.isEmpty() && bench.now().equals(over.now())) {
					say(told + " " + failure);
				}
			});
		} catch (CoreException e) {
			ErrorDialog.openError(getSite().getShell(), BenchMessages.Keep, BenchMessages.NotKept, e.getStatus());
		}
	}

	private void showSheet() {
		SheetLauncher.show(getSite().getShell(), "job", JobSheet.on(LocalDate.now(), bench, shown.advice()), BenchMessages.Sheet, BenchMessages.SheetNotWritten);
	}

	private void draft() {
		project().ifPresent(project -> DraftDialog.open(getSite().getShell(), project, bench, shown.advice()));
	}

	/** Does what the user follows. */
	private final class Follower implements Paragraph.Ways {
		@Override
		public void open(Span span) {
			BenchView.this.open(span);
		}

		@Override
		public void enter(Variable variable) {
			choose(variable);
		}

		@Override
		public void ask(Ask ask) {
			bar.choose(ask);
		}

		@Override
		public void set(Bench next) {
			BenchView.this.set(next);
		}
	}

	@Override
	public void setFocus() {
		bar.setFocus();
	}
}
