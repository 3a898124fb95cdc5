package org.baywright.workbench.editor.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.baywright.language.ide.card.Bit;
import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Change;
import org.baywright.language.ide.card.Line;
import org.baywright.model.Severity;
import org.baywright.workbench.Icon;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;

/** One field of a card: what it is called, its lines, and under each what is wrong with it. */
final class FieldRow {

	/**
	 * Where the keyboard is.
	 *
	 * @param typed what is typed there and not in the text yet
	 * @param caret where its caret stands
	 */
	record Spot(String line, List<Integer> path, Bit.Kind kind, Optional<String> typed, int caret) {

		/** Returns the same place of an element that is written by now. */
		Spot written() {
			return new Spot(Line.written(line), path, kind, typed, caret);
		}
	}

	private final Label label;
	private final Composite lines;
	private final CardForm.Doing doing;
	private Card.Field field;
	private List<BitControl> controls = List.of();
	private List<Composite> notes = List.of();
	private List<Composite> buttons = List.of();
	private Control more;
	private boolean wasBusy;
	/** Where something was done that makes the line another. */
	private String busyLine = "";
	private List<Integer> busyPath = List.of();

	FieldRow(Composite parent, Card.Field field, CardForm.Doing doing) {
		this.doing = doing;
		label = new Label(parent, SWT.NONE);
		label.setText(field.label().replace("&", "&&"));
		label.setToolTipText(plain(field.help()));
		GridDataFactory.fillDefaults().align(SWT.END, SWT.BEGINNING).indent(0, 7).applyTo(label);
		lines = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(2).spacing(6, 3).applyTo(lines);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(lines);
		this.field = field;
		build();
	}

	/** Returns help without its marks, for the mouse. */
	static String plain(String help) {
		return help.replace("`", "");
	}

	String label() {
		return field.label();
	}

	/** Shows the field as it is now. */
	void show(Card.Field now) {
		Card.Field old = field;
		field = now;
		if (isLike(old, now)) {
			int at = 0;
			for (int i = 0; i < now.lines().size(); i++) {
				for (Bit bit : now.lines().get(i).bits()) {
					controls.get(at++).show(bit);
				}
				note(notes.get(i), old.lines().get(i), now.lines().get(i));
				buttons(buttons.get(i), i);
			}
			see(more, now.more());
			wasBusy = false;
			return;
		}
		Optional<Spot> spot = focus();
		boolean busy = wasBusy;
		build();
		boolean there = busy && (focusBehind() || focusOnBlank()) || spot.filter(this::focus).isPresent();
		if (!there && (busy || spot.isPresent()) && !focusOnBlank()) {
			controls.stream().filter(BitControl::isInput).reduce((first, second) -> second).ifPresent(BitControl::setFocus);
		}
	}

	private static boolean isLike(Card.Field one, Card.Field other) {
		if (one.lines().size() != other.lines().size()) {
			return false;
		}
		for (int i = 0; i < one.lines().size(); i++) {
			Line left = one.lines().get(i);
			Line right = other.lines().get(i);
			if (!left.key().equals(right.key()) || (left.isDraft() != right.isDraft() || left.isInText() != right.isInText()) && isNamed(left)
					|| left.bits().size() != right.bits().size()) {
				return false;
			}
			for (int j = 0; j < left.bits().size(); j++) {
				if (!left.bits().get(j).isLike(right.bits().get(j))) {
					return false;
				}
			}
		}
		return true;
	}

	/** A name that stands in the text is shown in another way than one that is given just now. */
	private static boolean isNamed(Line line) {
		return line.bits().stream().anyMatch(bit -> bit.kind() == Bit.Kind.NAME);
	}

	/** What is wrong may come while a list is open above it, so it has a place of its own. */
	private void note(Composite note, Line old, Line now) {
		if (old != null && old.isDraft() == now.isDraft() && old.troubles().equals(now.troubles())) {
			return;
		}
		for (Control child : note.getChildren()) {
			child.dispose();
		}
		if (now.isDraft()) {
			Label missing = new Label(note, SWT.WRAP);
			missing.setText(CardMessages.Missing);
			GridDataFactory.fillDefaults().hint(100, SWT.DEFAULT).grab(true, false).applyTo(missing);
		}
		// what is wrong with a whole element stands at its name, where nothing can be put right
		Optional<Runnable> field = isNamed(now) ? Optional.empty() : Optional.of(() -> focus(now.key()));
		now.troubles().forEach(trouble -> trouble(note, trouble, doing, field));
		see(note, note.getChildren().length > 0);
	}

	private void build() {
		controls.forEach(BitControl::gone);
		for (Control child : lines.getChildren()) {
			child.dispose();
		}
		wasBusy = false;
		List<BitControl> made = new ArrayList<>();
		List<Composite> noted = new ArrayList<>();
		List<Composite> pressed = new ArrayList<>();
		for (int i = 0; i < field.lines().size(); i++) {
			Line line = field.lines().get(i);
			Composite sentence = new Composite(lines, SWT.NONE);
			sentence.setLayout(new LineLayout());
			GridDataFactory.fillDefaults().grab(true, false).applyTo(sentence);
			Label refused = new Label(lines, SWT.WRAP);
			boolean breaks = false;
			int indent = 0;
			for (Bit bit : line.bits()) {
				BitControl control = new BitControl(sentence, line, bit, doing, () -> busy(line, bit), why -> say(refused, why), breaks, indent);
				made.add(control);
				breaks = bit.kind() == Bit.Kind.ROW || breaks && control.control().isEmpty();
				indent = bit.kind() == Bit.Kind.ROW ? bit.indent() : indent;
			}
			Composite press = new Composite(lines, SWT.NONE);
			GridLayoutFactory.fillDefaults().numColumns(3).spacing(4, 0).applyTo(press);
			GridDataFactory.fillDefaults().align(SWT.END, SWT.BEGINNING).indent(0, 5).applyTo(press);
			buttons(press, i);
			pressed.add(press);
			refused.moveBelow(press);
			GridDataFactory.fillDefaults().span(2, 1).hint(100, SWT.DEFAULT).grab(true, false).exclude(true).applyTo(refused);
			refused.setVisible(false);
			Composite note = new Composite(lines, SWT.NONE);
			GridLayoutFactory.fillDefaults().spacing(0, 2).applyTo(note);
			GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(note);
			note(note, null, line);
			noted.add(note);
		}
		controls = List.copyOf(made);
		notes = List.copyOf(noted);
		buttons = List.copyOf(pressed);
		more = CardForm.link(lines, CardMessages.bind(CardMessages.Another, field.one()), plain(field.help()),
				() -> doing.begin(field.label(), () -> {
					wasBusy = true;
					busyLine = "";
				}));
		GridDataFactory.fillDefaults().span(2, 1).align(SWT.BEGINNING, SWT.CENTER).applyTo(more);
		see(more, field.more());
	}

	private static void see(Control control, boolean seen) {
		control.setVisible(seen);
		((GridData) control.getLayoutData()).exclude = !seen;
	}

	private void say(Label refused, String why) {
		if (!refused.isDisposed() && !refused.getText().equals(why)) {
			refused.setText(why.replace("&", "&&"));
			see(refused, !why.isEmpty());
			doing.fit();
		}
	}

	/** What can be done with a whole line: nothing with one that is not in the text, but for taking a second one away again. */
	private void buttons(Composite parent, int at) {
		Line line = field.lines().get(at);
		boolean clause = line.isClause();
		boolean up = clause && at > 0;
		boolean down = clause && at + 1 < field.lines().size() && field.lines().get(at + 1).isClause();
		boolean gone = clause || field.lines().size() > 1;
		String wanted = (up ? "\u2191" : "") + (down ? "\u2193" : "") + (gone ? "\u00d7" : "");
		if (wanted.equals(parent.getData())) {
			return;
		}
		parent.setData(wanted);
		for (Control child : parent.getChildren()) {
			child.dispose();
		}
		if (up) {
			CardForm.link(parent, "\u2191", CardMessages.Up, () -> change(line, new Change.MoveLine(-1)));
		}
		if (down) {
			CardForm.link(parent, "\u2193", CardMessages.Down, () -> change(line, new Change.MoveLine(1)));
		}
		if (gone) {
			CardForm.link(parent, "\u00d7", CardMessages.bind(CardMessages.RemoveLine, field.label()), () -> change(line, new Change.Delete()));
		}
	}

	private void change(Line line, Change change) {
		doing.change(line.key(), change, why -> {
		});
	}

	/** Shows what is wrong, and, where something can be done about it, a way to it. */
	static Composite trouble(Composite parent, Line.Trouble trouble, CardForm.Doing doing, Optional<Runnable> field) {
		Composite row = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(3).spacing(4, 0).applyTo(row);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
		Label icon = new Label(row, SWT.NONE);
		icon.setImage((trouble.severity() == Severity.ERROR ? Icon.ERROR : trouble.severity() == Severity.WARNING ? Icon.WARNING : Icon.INFO).image());
		GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(icon);
		Label sentence = new Label(row, SWT.WRAP);
		sentence.setText(plain(trouble.sentence()).replace("&", "&&"));
		GridDataFactory.fillDefaults().grab(true, false).hint(100, SWT.DEFAULT).applyTo(sentence);
		Control mend = CardForm.link(row, CardMessages.Mend, "", () -> doing.mend(trouble, row, field));
		GridDataFactory.fillDefaults().align(SWT.END, SWT.BEGINNING).applyTo(mend);
		return row;
	}

	// ---- the keyboard ----------------------------------------------------------------------------------------------

	Optional<Spot> focus() {
		return controls.stream().filter(BitControl::hasFocus)
				.map(control -> new Spot(control.line().key(), control.bit().path(), control.bit().kind(), control.typed(), control.caret())).findFirst();
	}

	/** Puts the keyboard where it was; returns whether there is such a place. */
	boolean focus(Spot spot) {
		List<BitControl> same = controls.stream().filter(control -> control.control().isPresent() && control.line().key().equals(spot.line())
				&& control.bit().path().equals(spot.path()) && control.bit().kind() == spot.kind()).toList();
		same.stream().findFirst().ifPresent(control -> {
			control.setFocus();
			control.goOn(spot.typed(), spot.caret());
		});
		return !same.isEmpty();
	}

	/** Puts the keyboard on a line, if it is one of this field: where something is empty, else where something is typed. */
	void focus(String line) {
		List<BitControl> inputs = controls.stream().filter(control -> control.isInput() && control.line().key().equals(line)).toList();
		inputs.stream().filter(control -> control.bit().value().isEmpty() && !control.bit().optional()).findFirst()
				.or(() -> inputs.stream().filter(BitControl::isText).findFirst()).or(() -> inputs.stream().findFirst())
				.ifPresent(BitControl::setFocus);
	}

	private void busy(Line line, Bit bit) {
		wasBusy = true;
		busyLine = line.key();
		busyPath = bit.path();
	}

	/** Puts the keyboard on what has to be filled in by what was just done on a line, else leaves it there; returns whether that is still there. */
	private boolean focusBehind() {
		List<BitControl> inLine = controls.stream().filter(control -> control.isInput() && control.line().key().equals(busyLine)).toList();
		Optional<BitControl> last = inLine.stream().filter(control -> begins(control.bit().path())).reduce((first, second) -> second);
		if (last.isEmpty()) {
			return false;
		}
		int behind = inLine.indexOf(last.get());
		IntStream.range(0, inLine.size()).filter(i -> isAsked(inLine, i)).filter(i -> begins(inLine.get(i).bit().path())).boxed().findFirst()
				.or(() -> IntStream.range(behind + 1, inLine.size()).filter(i -> isAsked(inLine, i)).boxed().findFirst())
				.map(inLine::get).or(() -> last).ifPresent(BitControl::setFocus);
		return true;
	}

	private boolean begins(List<Integer> path) {
		return path.size() >= busyPath.size() && path.subList(0, busyPath.size()).equals(busyPath);
	}

	/** Returns whether something has to be filled in there: a title before an empty name too, as that is made from it. */
	private static boolean isAsked(List<BitControl> inputs, int at) {
		Bit bit = inputs.get(at).bit();
		boolean names = at + 1 < inputs.size() && inputs.get(at + 1).bit().kind() == Bit.Kind.NAME && inputs.get(at + 1).bit().written().isEmpty();
		return bit.written().isEmpty() && (!bit.optional() || names && bit.kind() == Bit.Kind.TEXT);
	}

	/** Puts the keyboard on the first thing that has to be filled in; returns whether there is one. */
	private boolean focusOnBlank() {
		List<BitControl> inputs = controls.stream().filter(BitControl::isInput).toList();
		Optional<BitControl> blank = IntStream.range(0, inputs.size()).filter(i -> isAsked(inputs, i)).mapToObj(inputs::get).findFirst();
		blank.ifPresent(BitControl::setFocus);
		return blank.isPresent();
	}

	void setFocus() {
		controls.stream().filter(BitControl::isInput).findFirst().ifPresent(BitControl::setFocus);
	}

	boolean isTyping() {
		return controls.stream().anyMatch(BitControl::isTyping);
	}

	boolean takeBack() {
		return controls.stream().anyMatch(BitControl::takeBack);
	}

	void flush() {
		controls.forEach(BitControl::flush);
	}
}
