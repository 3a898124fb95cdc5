package org.baywright.workbench.view.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.language.ide.grid.CellForm;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.DropDown;
import org.baywright.workbench.preference.Preferences;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** The window in which one cell is edited. It only shows a {@link CellForm} and hands on what is chosen. */
final class CellDialog extends WritingDialog {

	private final CellForm form;
	private Composite fields;
	private Composite results;
	private Composite anew;
	private NewRuleFields draft;

	CellDialog(Shell parent, CellForm form) {
		super(parent, GridMessages.EditTitle, 560);
		this.form = form;
	}

	@Override
	void createFields(Composite parent) {
		setTitle(form.title());
		fields = parent;
		createRule();
		form.locked().forEach(sentence -> note(fields, sentence));
		results = wide(new Composite(fields, SWT.NONE));
		anew = wide(new Composite(fields, SWT.NONE));
		GridLayoutFactory.fillDefaults().numColumns(2).applyTo(anew);
		draft = new NewRuleFields(anew, form.snapshot(), form.draft(), false, this::fill);
		preview(fields, 130);
		showRule();
	}

	private <T extends Control> T wide(T control) {
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(control);
		return control;
	}

	private void createRule() {
		new Label(fields, SWT.NONE).setText(GridMessages.InRule);
		Combo rule = DropDown.of(fields, GridMessages.InRule);
		rule.setItems(form.rules().toArray(String[]::new));
		rule.select(form.rule());
		GridDataFactory.fillDefaults().grab(true, false).applyTo(rule);
		rule.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			form.rule(rule.getSelectionIndex());
			showRule();
		}));
	}

	// ---- what each result proves -----------------------------------------------------------------------------------

	private void showRule() {
		for (Control old : results.getChildren()) {
			old.dispose();
		}
		GridLayoutFactory.fillDefaults().numColumns(3).spacing(10, 4).applyTo(results);
		List<Combo> combos = new ArrayList<>();
		for (int i = 0; i < form.table().size(); i++) {
			combos.add(result(i));
		}
		if (form.table().isMeasured()) {
			limit();
		} else if (form.table().canBeApart()) {
			Button apart = new Button(results, SWT.PUSH);
			apart.setText(GridMessages.Apart);
			GridDataFactory.swtDefaults().span(3, 1).applyTo(apart);
			apart.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
				form.apart();
				showRule();
			}));
		}
		((GridData) anew.getLayoutData()).exclude = !form.isNew();
		anew.setVisible(form.isNew());
		fields.layout(true, true);
		if (getContents() != null) {
			Point wanted = getShell().computeSize(SWT.DEFAULT, SWT.DEFAULT);
			Point now = getShell().getSize();
			getShell().setSize(Math.max(wanted.x, now.x), Math.max(wanted.y, now.y));
		}
		if (!combos.isEmpty()) {
			combos.get(0).setFocus();
		}
		ask();
	}

	private Combo result(int line) {
		String title = form.table().title(line);
		Label label = new Label(results, SWT.NONE);
		label.setText((title.isEmpty() ? GridMessages.WithoutTest : title).replace("&", "&&"));
		Combo combo = DropDown.of(results, title.isEmpty() ? GridMessages.WithoutTest : title);
		combo.setItems(CellForm.VERDICTS.toArray(String[]::new));
		combo.select(form.choice(line));
		GridDataFactory.fillDefaults().span(2, 1).applyTo(combo);
		combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			form.choose(line, combo.getSelectionIndex());
			ask();
		}));
		return combo;
	}

	private void limit() {
		Label label = new Label(results, SWT.NONE);
		label.setText(form.table().unit().isEmpty() ? GridMessages.Limit : NLS.bind(GridMessages.LimitIn, form.table().unit()));
		Text limit = new Text(results, SWT.BORDER);
		Accessible.name(limit, label.getText());
		GridDataFactory.swtDefaults().hint(80, SWT.DEFAULT).applyTo(limit);
		Button add = new Button(results, SWT.PUSH);
		add.setText(GridMessages.AddLimit);
		add.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			Optional<String> wrong = form.limit(limit.getText());
			if (wrong.isPresent()) {
				setErrorMessage(wrong.get());
			} else {
				showRule();
			}
		}));
		// Enter in the field adds the limit, and does not write at once
		limit.addListener(SWT.FocusIn, event -> getShell().setDefaultButton(add));
		limit.addListener(SWT.FocusOut, event -> getShell().setDefaultButton(getButton(IDialogConstants.OK_ID)));
	}

	private void fill() {
		form.draft(draft.about(), draft.families(), draft.sign(), draft.because(), draft.author(), draft.file());
		ask();
	}

	// ---- what is written -------------------------------------------------------------------------------------------

	@Override
	Asked asked() {
		return new Asked(form.problem(), GridMessages.EditText, form.asked());
	}

	@Override
	protected void okPressed() {
		if (form.isNew()) {
			Preferences.setAuthor(form.draft().author());
		}
		super.okPressed();
	}
}
