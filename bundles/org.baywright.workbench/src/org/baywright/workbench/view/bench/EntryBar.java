package org.baywright.workbench.view.bench;

import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

import org.baywright.analysis.Variable;
import org.baywright.model.Family;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Subject;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.DropDown;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.events.FocusListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Where the family is chosen and findings are entered one by one. */
final class EntryBar {

	private final Composite bar;
	private final Combo family;
	private final Combo subject;
	private final Composite value;
	private final StackLayout stack = new StackLayout();
	private final Combo choice;
	private final Text number;
	private final Button enter;
	private final Consumer<String> hint;
	private List<Family> families = List.of();
	private List<Subject> subjects = List.of();

	/**
	 * @param choose hears of the family that is chosen, by name
	 * @param entered hears of what is entered, with its value
	 * @param hint hears what to do when something is about to be entered
	 */
	EntryBar(Composite parent, Consumer<String> choose, BiConsumer<Variable, String> entered, Consumer<String> hint) {
		this.hint = hint;
		bar = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(3).margins(4, 2).spacing(4, 3).applyTo(bar);
		family = combo(bar, BenchMessages.Family);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(60, SWT.DEFAULT).applyTo(family);
		subject = combo(bar, BenchMessages.Finding);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(60, SWT.DEFAULT).applyTo(subject);
		new Label(bar, SWT.NONE).setText(BenchMessages.Value);
		value = new Composite(bar, SWT.NONE);
		value.setLayout(stack);
		GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).applyTo(value);
		choice = DropDown.of(value, BenchMessages.Value);
		number = new Text(value, SWT.BORDER | SWT.SINGLE);
		Accessible.name(number, BenchMessages.Value);
		stack.topControl = number;
		enter = new Button(bar, SWT.PUSH);
		enter.setText(BenchMessages.Enter);
		enter.setEnabled(false);

		family.addSelectionListener(SelectionListener
				.widgetSelectedAdapter(event -> choose.accept(families.get(family.getSelectionIndex()).name())));
		subject.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			showValue();
			prompt();
		}));
		// the field's own hint is gone while it has the keyboard
		choice.addFocusListener(FocusListener.focusGainedAdapter(event -> prompt()));
		number.addFocusListener(FocusListener.focusGainedAdapter(event -> prompt()));
		Runnable send = () -> {
			int at = subject.getSelectionIndex();
			if (at >= 0) {
				Subject chosen = subjects.get(at);
				int picked = choice.getSelectionIndex();
				entered.accept(chosen.variable(), chosen.choices().isEmpty() ? number.getText()
						: picked < 0 ? "" : chosen.choices().get(picked).text());
			}
		};
		enter.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> send.run()));
		choice.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> send.run()));
		number.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> send.run()));
	}

	private static Combo combo(Composite parent, String name) {
		new Label(parent, SWT.NONE).setText(name);
		return DropDown.of(parent, name);
	}

	Composite control() {
		return bar;
	}

	/** Shows what can be chosen and entered on a bench. */
	void show(Bench bench) {
		families = bench.base().vehicleFamilies();
		set(family, families.stream().map(Family::title).toArray(String[]::new));
		int at = families.stream().map(Family::name).toList().indexOf(bench.now().family());
		if (at >= 0) {
			family.select(at);
		} else {
			family.deselectAll();
		}
		List<Subject> now = bench.subjects();
		if (!now.equals(subjects)) {
			Subject old = subject.getSelectionIndex() < 0 ? null : subjects.get(subject.getSelectionIndex());
			subjects = now;
			set(subject, subjects.stream().map(each -> each.kind() + ": " + each.title()).toArray(String[]::new));
			int again = old == null ? -1 : subjects.stream().map(Subject::variable).toList().indexOf(old.variable());
			if (!subjects.isEmpty()) {
				subject.select(Math.max(0, again));
			}
			showValue();
		}
		enter.setEnabled(!subjects.isEmpty());
	}

	private static void set(Combo combo, String[] items) {
		if (!Arrays.equals(items, combo.getItems())) {
			combo.setItems(items);
		}
	}

	/** Chooses what to enter, and puts the keyboard on its value. */
	void choose(Variable variable) {
		int at = subjects.stream().map(Subject::variable).toList().indexOf(variable);
		if (at >= 0) {
			subject.select(at);
			showValue();
			stack.topControl.setFocus();
			prompt();
		}
	}

	private void prompt() {
		int at = subject.getSelectionIndex();
		if (at >= 0) {
			hint.accept(subjects.get(at).prompt());
		}
	}

	private void showValue() {
		int at = subject.getSelectionIndex();
		choice.setEnabled(at >= 0);
		number.setEnabled(at >= 0);
		if (at < 0) {
			return;
		}
		Subject chosen = subjects.get(at);
		choice.setItems(chosen.choices().stream().map(Subject.Choice::title).toArray(String[]::new));
		if (!chosen.choices().isEmpty()) {
			choice.select(0);
		}
		number.setText("");
		number.setMessage(chosen.range());
		number.setToolTipText(NLS.bind(BenchMessages.ValueHint, chosen.range()));
		stack.topControl = chosen.choices().isEmpty() ? number : choice;
		value.layout();
	}

	void setFocus() {
		(subjects.isEmpty() ? family : subject).setFocus();
	}
}
