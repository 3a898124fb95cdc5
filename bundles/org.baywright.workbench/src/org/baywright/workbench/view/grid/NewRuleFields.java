package org.baywright.workbench.view.grid;

import java.util.List;

import org.baywright.language.ide.grid.NewRule;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Family;
import org.baywright.model.Named;
import org.baywright.model.Sign;
import org.baywright.workbench.DropDown;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** The fields that only a new rule needs. */
final class NewRuleFields {

	private final Runnable changed;
	private final List<Family> families;
	private final List<Sign> signs;
	private final Text about;
	private final Combo sign;
	private final Combo family;
	private final Text because;
	private final Text author;
	private final Combo file;

	/**
	 * @param snapshot the project
	 * @param now what is filled in already
	 * @param several whether the fields are for several rules, each of which has a title and a file of its own
	 * @param changed hears of each change
	 */
	NewRuleFields(Composite parent, Snapshot snapshot, NewRule now, boolean several, Runnable changed) {
		this.changed = changed;
		families = snapshot.rules().families();
		signs = snapshot.rules().signs();
		about = several ? null : text(parent, GridMessages.RuleAbout, now.title());
		sign = choice(parent, GridMessages.RuleSign, GridMessages.NoSign, signs);
		family = choice(parent, GridMessages.RuleFamily, GridMessages.EveryFamily, families);
		now.families().forEach(name -> family.select(1 + families.stream().map(Family::name).toList().indexOf(name)));
		because = text(parent, GridMessages.RuleBecause, now.because());
		author = text(parent, GridMessages.RuleAuthor, now.author());
		file = several ? null : file(parent, snapshot, now.file());
	}

	private Combo file(Composite parent, Snapshot snapshot, String now) {
		label(parent, GridMessages.RuleFile);
		Combo combo = new Combo(parent, SWT.DROP_DOWN);
		combo.setItems(snapshot.ownSources().keySet().toArray(String[]::new));
		combo.setText(now);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(combo);
		combo.addModifyListener(event -> changed.run());
		return combo;
	}

	private static void label(Composite parent, String text) {
		Label label = new Label(parent, SWT.NONE);
		label.setText(text);
	}

	private Text text(Composite parent, String label, String now) {
		label(parent, label);
		Text text = new Text(parent, SWT.BORDER);
		text.setText(now);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
		text.addModifyListener(event -> changed.run());
		return text;
	}

	private Combo choice(Composite parent, String label, String none, List<? extends Named> named) {
		label(parent, label);
		Combo combo = DropDown.of(parent, label);
		combo.add(none);
		named.forEach(each -> combo.add(each.title()));
		combo.select(0);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(combo);
		combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> changed.run()));
		return combo;
	}

	String about() {
		return about.getText().strip();
	}

	List<String> families() {
		int vehicles = family.getSelectionIndex() - 1;
		return vehicles < 0 ? List.of() : List.of(families.get(vehicles).name());
	}

	String sign() {
		int given = sign.getSelectionIndex() - 1;
		return given < 0 ? "" : signs.get(given).name();
	}

	String because() {
		return because.getText().strip();
	}

	String author() {
		return author.getText().strip();
	}

	String file() {
		return file.getText().strip();
	}
}
