package org.baywright.workbench.wizard;

import org.baywright.presenter.draft.FamilyDraft;
import org.baywright.model.words.Names;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** The fields for a family, in a parent of two columns. */
final class FamilyFields {

	private final Text title;
	private final Text name;
	private final Text from;
	private final Text to;
	private final Text engines;
	private final Text vin;
	private boolean named;
	private boolean suggesting;

	FamilyFields(Composite parent, Runnable changed) {
		title = field(parent, WizardMessages.FamilyCalled);
		name = field(parent, WizardMessages.FamilyName);
		label(parent, WizardMessages.FamilyYears);
		Composite years = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(3).applyTo(years);
		from = year(years);
		label(years, WizardMessages.FamilyTo);
		to = year(years);
		engines = field(parent, WizardMessages.FamilyEngines);
		engines.setMessage(WizardMessages.FamilyEnginesHint);
		vin = field(parent, WizardMessages.FamilyVin);
		title.addModifyListener(event -> {
			if (!named) {
				suggesting = true;
				name.setText(Names.suggest(title.getText()));
				suggesting = false;
			}
		});
		name.addModifyListener(event -> named |= !suggesting);
		for (Text text : new Text[] { title, name, from, to, engines, vin }) {
			text.addModifyListener(event -> changed.run());
		}
	}

	static Text field(Composite parent, String label) {
		label(parent, label);
		Text text = new Text(parent, SWT.BORDER);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
		return text;
	}

	static Label label(Composite parent, String text) {
		Label label = new Label(parent, SWT.NONE);
		label.setText(text);
		GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(label);
		return label;
	}

	private static Text year(Composite parent) {
		Text text = new Text(parent, SWT.BORDER);
		text.setTextLimit(4);
		GridDataFactory.swtDefaults().hint(60, SWT.DEFAULT).applyTo(text);
		return text;
	}

	void setFocus() {
		title.setFocus();
	}

	FamilyDraft draft() {
		return new FamilyDraft(title.getText(), name.getText().strip(), from.getText(), to.getText(), engines.getText(),
				vin.getText());
	}
}
