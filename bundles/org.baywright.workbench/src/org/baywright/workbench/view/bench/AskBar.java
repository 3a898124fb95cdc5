package org.baywright.workbench.view.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Collectors;

import org.baywright.analysis.Variable;
import org.baywright.model.Family;
import org.baywright.presenter.bench.Ask;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Subject;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.Choosing;
import org.baywright.workbench.DropDown;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.events.FocusListener;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Where the vehicle is chosen and the one thing is answered that is asked for; anything else can be entered instead. */
final class AskBar {

	private static final int NARROW = 60;

	private final Composite bar;
	private final Combo family;
	private final Label title;
	private final Label detail;
	private final Composite row;
	private final Composite value;
	private final StackLayout stack = new StackLayout();
	private final Combo choice;
	private final Text number;
	private final Button give;
	private final Button remove;
	private final Button other;
	private final Consumer<String> hint;
	private final Consumer<Subject> chosen;
	private List<Family> families = List.of();
	private List<Subject> subjects = List.of();
	private List<Ask> ofTheJob = List.of();
	private Optional<Ask> ask = Optional.empty();
	/** What was entered. */
	private Set<Variable> entered = Set.of();
	/** Whether the answer had the keyboard before the next thing was worked out. */
	private boolean answering;
	/** Whether the last thing that was asked was answered. */
	private boolean given;

	/**
	 * @param choose hears of the family that is chosen, by name
	 * @param answered hears of the answer
	 * @param removed hears of what is taken away that was entered
	 * @param hint hears what to do when something is about to be answered
	 * @param chosen hears of what the user chose to enter instead of what is asked for
	 */
	AskBar(Composite parent, Consumer<String> choose, BiConsumer<Ask, String> answered, Consumer<Variable> removed, Consumer<String> hint, Consumer<Subject> chosen) {
		this.hint = hint;
		this.chosen = chosen;
		bar = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(2).margins(6, 3).spacing(4, 4).applyTo(bar);
		family = combo(bar, BenchMessages.Family);
		title = wrapped(bar);
		title.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
		detail = wrapped(bar);
		row = new Composite(bar, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(3).applyTo(row);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(row);
		value = new Composite(row, SWT.NONE);
		value.setLayout(stack);
		GridDataFactory.fillDefaults().grab(true, false).hint(NARROW, SWT.DEFAULT).applyTo(value);
		choice = DropDown.of(value, BenchMessages.Value);
		// it would lie over what is told below
		choice.setToolTipText(null);
		number = new Text(value, SWT.BORDER | SWT.SINGLE);
		Accessible.name(number, BenchMessages.Value);
		stack.topControl = number;
		give = new Button(row, SWT.PUSH);
		remove = new Button(row, SWT.PUSH);
		remove.setText(BenchMessages.Remove);
		remove.setToolTipText(BenchMessages.RemoveHint);
		remove.setLayoutData(new GridData());
		remove.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> ask.flatMap(Ask::subject).map(Subject::variable).ifPresent(removed)));
		other = new Button(bar, SWT.PUSH);
		other.setText(BenchMessages.Other);
		GridDataFactory.fillDefaults().span(2, 1).align(SWT.BEGINNING, SWT.CENTER).applyTo(other);

		family.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> choose.accept(families.get(family.getSelectionIndex()).name())));
		other.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chooseOther()));
		// the field's own hint is gone while it has the keyboard
		choice.addFocusListener(FocusListener.focusGainedAdapter(event -> prompt()));
		number.addFocusListener(FocusListener.focusGainedAdapter(event -> prompt()));
		Runnable send = () -> ask.filter(asked -> give.isEnabled()).ifPresent(asked -> {
			given = true;
			answered.accept(asked, typed(asked));
		});
		give.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> send.run()));
		// a list opens on Return by itself and does not tell of it
		choice.addKeyListener(KeyListener.keyPressedAdapter(event -> {
			if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
				event.doit = false;
				send.run();
			}
		}));
		number.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> send.run()));
		ask(Optional.empty());
	}

	private void chooseOther() {
		List<Ask> all = new ArrayList<>(subjects.stream().map(Ask::of).toList());
		all.addAll(ofTheJob);
		Choosing.one(bar.getShell(), BenchMessages.OtherTitle, BenchMessages.OtherHint, all, AskBar::label, each -> null).ifPresent(each -> {
			choose(each);
			each.subject().filter(subjects::contains).ifPresent(chosen);
		});
	}

	/** What is found or what the vehicle is tells its kind. */
	private static String label(Ask ask) {
		return ask.title() + ask.subject().filter(subject -> !subject.variable().name().isEmpty()).map(subject -> " (" + subject.kind().toLowerCase(Locale.ROOT) + ")").orElse("");
	}

	private static Combo combo(Composite parent, String name) {
		new Label(parent, SWT.NONE).setText(name);
		Combo combo = DropDown.of(parent, name);
		GridDataFactory.fillDefaults().grab(true, false).hint(NARROW, SWT.DEFAULT).applyTo(combo);
		return combo;
	}

	private static Label wrapped(Composite parent) {
		Label label = new Label(parent, SWT.WRAP);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(NARROW, SWT.DEFAULT).applyTo(label);
		return label;
	}

	private String typed(Ask asked) {
		return asked.subject().map(subject -> {
			int picked = choice.getSelectionIndex();
			return subject.choices().isEmpty() ? number.getText() : picked < 0 ? "" : subject.choices().get(picked).text();
		}).orElse("");
	}

	Composite control() {
		return bar;
	}

	/** Shows what can be chosen and entered on a bench, while what comes next is worked out. */
	void show(Bench bench) {
		families = bench.base().vehicleFamilies();
		set(family, families.stream().map(Family::title).toArray(String[]::new));
		int at = families.stream().map(Family::name).toList().indexOf(bench.now().family());
		if (at >= 0) {
			family.select(at);
		} else {
			family.deselectAll();
		}
		subjects = bench.subjects();
		entered = bench.lines().stream().map(Bench.Line::variable).collect(Collectors.toSet());
		ofTheJob = Ask.ofTheJob(bench);
		other.setEnabled(!subjects.isEmpty());
		Control focus = bar.getDisplay().getFocusControl();
		answering |= focus == choice || focus == number || focus == give;
		give.setEnabled(false);
	}

	private static void set(Combo combo, String[] items) {
		if (!Arrays.equals(items, combo.getItems())) {
			combo.setItems(items);
		}
	}

	/** Asks for something; for nothing before a vehicle is chosen, and where what was entered cannot be. */
	void ask(Optional<Ask> next) {
		// what is chosen and not given yet stays when the rules change meanwhile
		boolean same = !given && asked(ask).equals(asked(next));
		given = false;
		ask = next;
		title.setText(mnemonicless(next.map(Ask::title).orElse(families.isEmpty() || family.getSelectionIndex() >= 0 ? "" : BenchMessages.ChooseVehicle)));
		detail.setText(mnemonicless(next.map(Ask::detail).orElse("")));
		show(title, !title.getText().isEmpty());
		show(detail, !detail.getText().isEmpty());
		show(row, next.isPresent());
		Optional<Subject> subject = next.flatMap(Ask::subject);
		show(value, subject.isPresent());
		// what is read in a verification is not what was found before
		show(remove, subject.filter(found -> found.title().equals(next.get().title())).map(Subject::variable).filter(entered::contains).isPresent());
		subject.ifPresent(offered -> offer(offered, same));
		give.setText(next.map(Ask::button).orElse(BenchMessages.Enter));
		give.setEnabled(next.isPresent());
		row.layout();
		value.layout();
		title.requestLayout();
		detail.requestLayout();
		give.requestLayout();
		if (answering) {
			answering = false;
			focusAnswer();
			// the keyboard may be there already
			prompt();
		}
	}

	private static String mnemonicless(String text) {
		return text.replace("&", "&&");
	}

	private static void show(Control control, boolean shown) {
		((GridData) control.getLayoutData()).exclude = !shown;
		control.setVisible(shown);
	}

	private static List<Object> asked(Optional<Ask> ask) {
		return List.of(ask.map(Ask::title), ask.flatMap(Ask::subject).map(Subject::variable));
	}

	/** @param same whether the same is asked as before */
	private void offer(Subject subject, boolean same) {
		String chosen = same ? choice.getText() : "";
		String typed = same ? number.getText() : "";
		String[] titles = subject.choices().stream().map(Subject.Choice::title).toArray(String[]::new);
		if (!same || !Arrays.equals(titles, choice.getItems())) {
			choice.setItems(titles);
			// nothing is noted that nobody chose
			choice.select(titles.length == 1 ? 0 : Arrays.asList(titles).indexOf(chosen));
		}
		if (!number.getText().equals(typed)) {
			number.setText(typed);
		}
		number.setMessage(subject.range());
		stack.topControl = subject.choices().isEmpty() ? number : choice;
	}

	/** Asks for something that the user chose, and puts the keyboard on its value. */
	void choose(Variable variable) {
		subjects.stream().filter(subject -> subject.variable().equals(variable)).findFirst().ifPresent(this::choose);
	}

	private void choose(Subject subject) {
		choose(Ask.of(subject));
		chosen.accept(subject);
	}

	/** Asks for something that the user chose, and puts the keyboard on its value. */
	void choose(Ask chosen) {
		ask(Optional.of(chosen));
		focusAnswer();
		prompt();
	}

	private void focusAnswer() {
		if (ask.isPresent()) {
			(ask.get().subject().isPresent() ? stack.topControl : give).setFocus();
		}
	}

	private void prompt() {
		ask.flatMap(Ask::subject).map(Subject::prompt).ifPresent(hint);
	}

	void setFocus() {
		if (ask.isPresent()) {
			focusAnswer();
		} else {
			family.setFocus();
		}
	}
}
