package org.baywright.workbench.wizard;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.Named;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.presenter.draft.Ending;
import org.baywright.model.words.Names;
import org.baywright.presenter.draft.RuleDraft;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.Icon;
import org.baywright.workbench.preference.Preferences;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.ModifyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** The fields for a rule: one line for each result of the chosen test, and the text as it will be written. */
final class RulePage extends WizardPage {

	private final Target to;
	private final RuleBase rules;
	private final List<Row> rows = new ArrayList<>();
	private Text about;
	private Text name;
	private Combo family;
	private Combo sign;
	private Combo test;
	private Composite expected;
	private Text low;
	private Text high;
	private Label unit;
	private Composite results;
	private Text because;
	private Text author;
	private Combo file;
	private Text preview;
	private boolean named;
	private boolean suggesting;

	/** What one result leads to. */
	private record Row(String result, Label label, Combo kind, Combo what) {

		Ending ending(RuleBase rules) {
			Ending.Kind chosen = Ending.Kind.values()[Math.max(0, kind.getSelectionIndex())];
			String text = what.getText().strip();
			int index = what.indexOf(text);
			boolean fault = chosen.needsMore() && chosen != Ending.Kind.REFERS;
			return new Ending(chosen, fault ? index < 0 ? "" : rules.faults().get(index).name() : text);
		}
	}

	RulePage(Target to) {
		super("rule", WizardMessages.RuleTitle, Icon.RULE.large());
		this.to = to;
		rules = to.rules();
		setDescription(WizardMessages.RuleText);
	}

	@Override
	public void createControl(Composite parent) {
		Composite fields = new Composite(parent, SWT.NONE);
		GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
		about = FamilyFields.field(fields, WizardMessages.RuleAbout);
		name = FamilyFields.field(fields, WizardMessages.RuleName);
		family = choice(fields, WizardMessages.RuleFamily, WizardMessages.RuleEveryFamily, rules.families());
		sign = choice(fields, WizardMessages.RuleSign, WizardMessages.RuleNoSign, rules.signs());
		test = choice(fields, WizardMessages.RuleTest, null, rules.tests());
		createExpected(fields);
		results = new Composite(fields, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(3).applyTo(results);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).indent(0, 4).applyTo(results);
		because = FamilyFields.field(fields, WizardMessages.RuleBecause);
		author = FamilyFields.field(fields, WizardMessages.Author);
		author.setText(Preferences.author());
		file = to.fileField(fields, "rules.bay");
		Label shows = FamilyFields.label(fields, WizardMessages.RulePreview);
		GridDataFactory.fillDefaults().span(2, 1).applyTo(shows);
		preview = new Text(fields, SWT.BORDER | SWT.MULTI | SWT.READ_ONLY | SWT.V_SCROLL | SWT.H_SCROLL);
		preview.setFont(JFaceResources.getTextFont());
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(560, 150).applyTo(preview);
		listen();
		setControl(fields);
		showResults();
		judge();
		setErrorMessage(rules.tests().isEmpty() ? WizardMessages.RuleNoTests : null);
		about.setFocus();
	}

	private void createExpected(Composite fields) {
		FamilyFields.label(fields, WizardMessages.RuleExpected);
		expected = new Composite(fields, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(4).applyTo(expected);
		low = number();
		FamilyFields.label(expected, "\u2026");
		high = number();
		unit = FamilyFields.label(expected, "                ");
	}

	private Text number() {
		Text text = new Text(expected, SWT.BORDER);
		GridDataFactory.swtDefaults().hint(70, SWT.DEFAULT).applyTo(text);
		return text;
	}

	private static Combo choice(Composite parent, String label, String none, List<? extends Named> named) {
		FamilyFields.label(parent, label);
		Combo combo = new Combo(parent, SWT.READ_ONLY);
		if (none != null) {
			combo.add(none);
		}
		named.forEach(element -> combo.add(shown(element)));
		combo.select(0);
		combo.setVisibleItemCount(15);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(combo);
		return combo;
	}

	private static String shown(Named element) {
		return element.title().equals(element.name()) ? element.name() : element.title() + " (" + element.name() + ")";
	}

	private void listen() {
		about.addModifyListener(event -> {
			if (!named) {
				suggesting = true;
				name.setText(Names.free(Names.suggest(about.getText()), rules.rules().stream().map(rule -> rule.name()).toList()));
				suggesting = false;
			}
		});
		name.addModifyListener(event -> named |= !suggesting);
		ModifyListener judging = event -> judge();
		for (Text text : new Text[] { about, name, low, high, because, author }) {
			text.addModifyListener(judging);
		}
		file.addModifyListener(judging);
		for (Combo combo : new Combo[] { family, sign }) {
			combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> judge()));
		}
		test.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			showResults();
			judge();
		}));
	}

	private Optional<Test> chosenTest() {
		int index = test.getSelectionIndex();
		return index < 0 ? Optional.empty() : Optional.of(rules.tests().get(index));
	}

	private void showResults() {
		rows.clear();
		for (Control old : results.getChildren()) {
			old.dispose();
		}
		chosenTest().ifPresent(chosen -> {
			unit.setText(RuleDraft.unit(chosen));
			low.setEnabled(RuleDraft.results(chosen).contains("met"));
			high.setEnabled(low.getEnabled());
			RuleDraft.results(chosen).forEach(this::addRow);
		});
		results.getParent().layout(true, true);
		if (getControl() != null) {
			getControl().getShell().pack();
		}
	}

	private void addRow(String result) {
		Label label = FamilyFields.label(results, result);
		Combo kind = new Combo(results, SWT.READ_ONLY);
		for (Ending.Kind each : Ending.Kind.values()) {
			kind.add(each.words());
		}
		kind.select(0);
		Accessible.name(kind, result + " " + WizardMessages.RuleProves);
		Combo what = new Combo(results, SWT.DROP_DOWN);
		rules.faults().forEach(fault -> what.add(shown(fault)));
		what.setVisibleItemCount(15);
		what.setEnabled(false);
		Accessible.name(what, result + " " + WizardMessages.RuleWhat);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(what);
		Row row = new Row(result, label, kind, what);
		rows.add(row);
		kind.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			what.setEnabled(row.ending(rules).kind().needsMore());
			judge();
		}));
		what.addModifyListener(event -> judge());
	}

	String file() {
		return file.getText().strip();
	}

	RuleDraft draft() {
		Map<String, Ending> endings = new LinkedHashMap<>();
		rows.forEach(row -> endings.put(row.result(), row.ending(rules)));
		int vehicles = family.getSelectionIndex() - 1;
		int given = sign.getSelectionIndex() - 1;
		return new RuleDraft(about.getText().strip(), name.getText().strip(),
				vehicles < 0 ? List.of() : List.of(rules.families().get(vehicles).name()),
				given < 0 ? "" : rules.signs().get(given).name(), chosenTest().map(Test::name).orElse(""), low.getText(), high.getText(),
				endings, because.getText().strip(), author.getText().strip(), LocalDate.now());
	}

	String text() {
		return draft().text(rules);
	}

	private void judge() {
		RuleDraft draft = draft();
		chosenTest().ifPresent(chosen -> {
			List<String> possible = draft.shown(chosen);
			rows.forEach(row -> {
				boolean can = possible.contains(row.result());
				row.label().setEnabled(can);
				row.kind().setEnabled(can);
				row.what().setEnabled(can && row.ending(rules).kind().needsMore());
			});
		});
		Optional<String> wrong = draft.problem(rules);
		preview.setText(wrong.isPresent() ? "" : draft.text(rules));
		setErrorMessage(wrong.orElse(null));
		setPageComplete(wrong.isEmpty() && !file().isBlank());
	}
}
