package org.baywright.workbench.wizard;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.baywright.presenter.packing.PackCheck;
import org.baywright.presenter.packing.PackCheck.Block;
import org.baywright.workbench.Icon;
import org.baywright.workbench.project.LiveState.Checked;
import org.baywright.workbench.project.LiveState;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.Places;
import org.baywright.workbench.project.RuleProjects;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Says where the pack goes and what blocks it; follows the checks while it is open. */
final class PackPage extends WizardPage {

	private final Optional<Target> target;
	private final Consumer<LiveState> heard = state -> later();
	private Text file;
	private Button sheet;
	private Button draft;
	private Label summary;
	private Label shows;
	private TableViewer blocks;
	private Checked checked;

	PackPage(Optional<Target> target) {
		super("pack", WizardMessages.PackTitle, Icon.PACK.large());
		this.target = target;
		setDescription(target.isPresent() ? WizardMessages.PackText : WizardMessages.NoProject);
	}

	@Override
	public void createControl(Composite parent) {
		Composite fields = new Composite(parent, SWT.NONE);
		GridLayoutFactory.swtDefaults().numColumns(3).applyTo(fields);
		FamilyFields.label(fields, WizardMessages.PackProject);
		Label project = FamilyFields.label(fields, target.map(to -> to.project().getName()).orElse(""));
		GridDataFactory.fillDefaults().span(2, 1).applyTo(project);
		file = FamilyFields.field(fields, WizardMessages.PackFile);
		target.ifPresent(to -> file.setText(to.project().getLocation().append(to.project().getName() + ".baypack").toOSString()));
		file.addModifyListener(event -> judge());
		Button browse = new Button(fields, SWT.PUSH);
		browse.setText(WizardMessages.PackBrowse);
		browse.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> browse()));
		sheet = new Button(fields, SWT.CHECK);
		sheet.setText(WizardMessages.PackSheet);
		sheet.setSelection(true);
		GridDataFactory.fillDefaults().span(3, 1).applyTo(sheet);
		summary = new Label(fields, SWT.WRAP);
		GridDataFactory.fillDefaults().span(3, 1).grab(true, false).hint(560, SWT.DEFAULT).indent(0, 8).applyTo(summary);
		draft = new Button(fields, SWT.CHECK);
		draft.setText(WizardMessages.PackDraft);
		draft.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> judge()));
		GridDataFactory.fillDefaults().span(3, 1).exclude(true).applyTo(draft);
		shows = FamilyFields.label(fields, WizardMessages.PackBlocks);
		GridDataFactory.fillDefaults().span(3, 1).applyTo(shows);
		createBlocks(fields);
		setControl(fields);
		target.ifPresent(to -> RuleProjects.of(to.project()).addListener(heard));
		judge();
	}

	private void createBlocks(Composite fields) {
		blocks = new TableViewer(fields, SWT.BORDER | SWT.FULL_SELECTION | SWT.SINGLE | SWT.V_SCROLL);
		GridDataFactory.fillDefaults().span(3, 1).grab(true, true).hint(560, 180).applyTo(blocks.getControl());
		blocks.setContentProvider(ArrayContentProvider.getInstance());
		blocks.setLabelProvider(new LabelProvider() {
			@Override
			public String getText(Object element) {
				Block block = (Block) element;
				return block.span().file() + ", line " + block.span().line() + ": " + block.message();
			}

			@Override
			public Image getImage(Object element) {
				return Icon.ERROR.image();
			}
		});
		blocks.addDoubleClickListener(event -> {
			// Enter in the table's own field to search comes without a line
			if (event.getSelection() instanceof IStructuredSelection chosen && chosen.getFirstElement() instanceof Block block) {
				Target to = target.orElseThrow();
				getShell().close();
				Places.open(to.project(), block.span(), true);
			}
		});
	}

	private void browse() {
		FileDialog dialog = new FileDialog(getShell(), SWT.SAVE);
		dialog.setFilterExtensions(new String[] { "*.baypack" });
		dialog.setFilterNames(new String[] { WizardMessages.PackFilter });
		dialog.setFileName(file.getText());
		String chosen = dialog.open();
		if (chosen != null) {
			file.setText(chosen.endsWith(".baypack") ? chosen : chosen + ".baypack");
		}
	}

	private void later() {
		if (getControl() != null && !getControl().isDisposed()) {
			getControl().getDisplay().asyncExec(() -> {
				if (!getControl().isDisposed()) {
					judge();
				}
			});
		}
	}

	private void judge() {
		LiveState state = target.map(Target::state).orElse(null);
		if (state == null) {
			setPageComplete(false);
			return;
		}
		boolean ready = false;
		boolean forDraft = false;
		List<Block> blocking = List.of();
		Optional<Checked> fresh = state.fresh();
		if (fresh.isPresent()) {
			checked = fresh.get();
			PackCheck check = PackCheck.of(checked.snapshot().problems(), checked.report());
			summary.setText(check.summary());
			blocking = check.blocking();
			forDraft = check.isForDraft();
			ready = check.isReady(isDraft());
		} else {
			summary.setText(state.failure().orElse(WizardMessages.PackWaiting));
		}
		draft.setVisible(forDraft);
		((GridData) draft.getLayoutData()).exclude = !forDraft;
		blocks.setInput(blocking);
		shows.setVisible(!blocking.isEmpty());
		blocks.getControl().setVisible(!blocking.isEmpty());
		summary.getParent().layout(true);
		boolean written = !file.getText().isBlank() && isPath(file.getText());
		Path folder = written ? file().getParent() : null;
		boolean named = folder != null && Files.isDirectory(folder) && !Files.isDirectory(file());
		boolean over = named && checked != null && checked.snapshot().isBuiltOn(file());
		setErrorMessage(over ? WizardMessages.PackOver : named ? null : folder == null || Files.isDirectory(folder) ? WizardMessages.PackNoFile
				: NLS.bind(WizardMessages.PackNoFolder, folder));
		setMessage(named && !over && Files.exists(file()) ? WizardMessages.PackExists : null, WARNING);
		setPageComplete(ready && named && !over);
	}

	private static boolean isPath(String text) {
		try {
			return Path.of(text).isAbsolute();
		} catch (InvalidPathException e) {
			return false;
		}
	}

	Path file() {
		return Path.of(file.getText());
	}

	boolean withSheet() {
		return sheet.getSelection();
	}

	/** Returns whether the user asked for a pack although the sign-off is not met. */
	boolean isDraft() {
		return draft.getSelection();
	}

	Optional<Path> folder() {
		return target.map(to -> Path.of(to.project().getLocationURI()));
	}

	/** Returns the rules as they were checked. */
	Checked checked() {
		return checked;
	}

	@Override
	public void dispose() {
		target.map(to -> RuleProjects.of(to.project())).ifPresent((OpenProject open) -> open.removeListener(heard));
		super.dispose();
	}
}
