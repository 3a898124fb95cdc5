package org.baywright.workbench.editor.card;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.baywright.language.ide.card.Bit;
import org.baywright.language.ide.card.Change;
import org.baywright.language.ide.card.Line;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.DropDown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.FocusListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.forms.widgets.Hyperlink;

/** The control of one thing on a line. */
final class BitControl {

	private static final int PAUSE = 900;
	private static final long MOST_WAITING = 3_000;
	private static final int CHOOSING = 350;

	private final Line line;
	private final CardForm.Doing doing;
	private final Runnable busy;
	private final Consumer<String> say;
	private final Runnable pause = this::paused;
	private final Runnable picked = this::picked;
	/** Whether the choice is gone through with the keys of the keyboard, its list closed. */
	private boolean keyed;
	/** What is on its way into the line. */
	private String sent;
	private int chosen = -1;
	private Bit bit;
	private Control control;
	private Text text;
	private NameBox names;
	/** What was typed stays out of the text until it can be written. */
	private String refused = "";
	/** What had the keyboard when something was chosen in a list: with the mouse that need not be the list. */
	private Control beside;
	/** What was typed and is done with, until the card shows what came of it: an undo may be quicker. */
	private String done;
	/** Since when something waits for a pause of who types; 0 if nothing does. */
	private long waiting;

	/**
	 * @param busy to be run before something that makes the line another
	 * @param say hears why what was typed cannot be written; the empty text if it can
	 * @param breaks whether a new row begins here
	 */
	BitControl(Composite parent, Line line, Bit bit, CardForm.Doing doing, Runnable busy, Consumer<String> say, boolean breaks, int indent) {
		this.line = line;
		this.bit = bit;
		this.doing = doing;
		this.busy = busy;
		this.say = say;
		make(parent);
		if (control != null) {
			control.setLayoutData(new LineLayout.Place(width(), grows(), breaks, indent));
			show(bit);
			if (text != null) {
				doing.refused(line.key(), bit.path()).ifPresent(this::again);
			}
		}
	}

	/** Shows once more what could not be written before, and why. */
	private void again(String typed) {
		text.setText(typed);
		refused = typed;
		text.getDisplay().asyncExec(() -> {
			if (!text.isDisposed() && text.getText().equals(typed)) {
				refused = "";
				commit();
			}
		});
	}

	Optional<Control> control() {
		return Optional.ofNullable(control);
	}

	Line line() {
		return line;
	}

	Bit bit() {
		return bit;
	}

	boolean isInput() {
		return text != null && text.getEditable() || control instanceof Combo || control instanceof Button;
	}

	/** Returns whether something is typed into it. */
	boolean isText() {
		return text != null;
	}

	boolean hasFocus() {
		return control != null && !control.isDisposed() && (control.isFocusControl() || text != null && text.isFocusControl());
	}

	void setFocus() {
		(text != null ? text : control).setFocus();
	}

	/** Returns what is typed and not in the text yet. */
	Optional<String> typed() {
		return text == null || text.getText().strip().equals(bit.value()) ? Optional.empty() : Optional.of(text.getText());
	}

	int caret() {
		return text == null ? 0 : text.getCaretPosition();
	}

	/** Goes on where somebody was typing in the control that this one takes the place of. */
	void goOn(Optional<String> typed, int caret) {
		if (text != null) {
			typed.ifPresent(text::setText);
			text.setSelection(Math.min(caret, text.getCharCount()));
		}
	}

	private int width() {
		return switch (bit.kind()) {
		case TEXT -> 180;
		case SENTENCE, FREE -> 300;
		case REFERENCE -> Math.max(190, Math.min(460, wide(bit.value()) + 70));
		case AMOUNT, DATE -> chars(11);
		case NUMBER, UNIT -> chars(7);
		case PLAIN -> chars(9);
		case NAME -> text == null ? -1 : chars(16);
		default -> -1;
		};
	}

	private int wide(String words) {
		GC gc = new GC(control);
		try {
			return gc.textExtent(words).x;
		} finally {
			gc.dispose();
		}
	}

	private int chars(int count) {
		GC gc = new GC(control);
		try {
			return (int) (gc.getFontMetrics().getAverageCharacterWidth() * count) + 20;
		} finally {
			gc.dispose();
		}
	}

	private boolean grows() {
		return bit.kind() == Bit.Kind.TEXT || bit.kind() == Bit.Kind.SENTENCE || bit.kind() == Bit.Kind.FREE;
	}

	private void make(Composite parent) {
		switch (bit.kind()) {
		case WORD -> {
			Label word = new Label(parent, SWT.NONE);
			word.setText(bit.value().replace("&", "&&"));
			control = word;
		}
		case TEXT, NUMBER, AMOUNT, DATE, UNIT, PLAIN -> box(new Text(parent, SWT.BORDER | SWT.SINGLE));
		case NAME -> {
			// a name that others speak of is changed everywhere at once
			if (bit.written().isEmpty() || line.isDraft() || !line.isInText()) {
				box(new Text(parent, SWT.BORDER | SWT.SINGLE));
			} else {
				control = CardForm.link(parent, bit.value(), CardMessages.Rename, () -> doing.rename(line.key(), bit.path()));
			}
		}
		case SENTENCE, FREE -> sentence(new Text(parent, SWT.BORDER | SWT.MULTI | SWT.WRAP));
		case REFERENCE -> {
			names = new NameBox(parent, bit.name(), answer -> doing.choices(line.key(), bit.path(), answer), this::chosen);
			names.text().setMessage(bit.hint());
			listen(names.text());
			control = names;
		}
		case PICK -> pick(parent);
		case FLAG -> {
			Button flag = new Button(parent, SWT.CHECK);
			flag.setText(bit.value());
			flag.addSelectionListener(SelectionListener.widgetSelectedAdapter(
					event -> doing.change(line.key(), new Change.Pick(bit.path(), flag.getSelection() ? 1 : 0), why -> {
					})));
			control = flag;
		}
		case ADD -> link(parent, CardMessages.bind(CardMessages.AddAlso, bit.value()), "",
				new Change.Add(bit.path()));
		case ADD_GROUP -> link(parent, CardMessages.bind(CardMessages.AddGroup, bit.value()), "", new Change.AddGroup(bit.path()));
		case REMOVE -> link(parent, "\u00d7", CardMessages.bind(CardMessages.Remove, bit.name()), new Change.Remove(bit.path()));
		case UP -> link(parent, "\u2191", CardMessages.Up, new Change.Move(bit.path(), -1));
		case DOWN -> link(parent, "\u2193", CardMessages.Down, new Change.Move(bit.path(), 1));
		case ROW -> {
			// the next control begins the row
		}
		}
	}

	private void link(Composite parent, String words, String hint, Change change) {
		control = CardForm.link(parent, words, hint.isEmpty() ? bit.name() : hint, () -> doing.change(line.key(), change, why -> busy.run()));
	}

	private void pick(Composite parent) {
		Combo combo = DropDown.of(parent, bit.name());
		combo.setItems(bit.options().stream().map(Bit.Option::label).toArray(String[]::new));
		// who goes down a list with the arrow keys means the entry where the keys stop
		combo.addListener(SWT.KeyDown, event -> keyed = !combo.getListVisible() && event.keyCode != SWT.CR && event.keyCode != SWT.KEYPAD_CR);
		combo.addListener(SWT.MouseDown, event -> keyed = false);
		combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			beside = combo.getDisplay().getFocusControl();
			combo.getDisplay().timerExec(CHOOSING, picked);
		}));
		combo.addFocusListener(FocusListener.focusLostAdapter(event -> picked()));
		control = combo;
	}

	private void picked() {
		if (!(control instanceof Combo combo) || combo.isDisposed() || combo.getSelectionIndex() < 0 || combo.getSelectionIndex() == chosen) {
			return;
		}
		combo.getDisplay().timerExec(-1, picked);
		chosen = combo.getSelectionIndex();
		// who chose in the list goes on with what has to be filled in now
		boolean done = !keyed && (combo.isFocusControl() || combo.getDisplay().getFocusControl() == beside);
		doing.change(line.key(), new Change.Pick(bit.path(), bit.options().get(chosen).number()), why -> {
			if (done) {
				busy.run();
			}
		});
	}

	// ---- fields for text ---------------------------------------------------------------------------------------------

	private void box(Text field) {
		control = field;
		Accessible.name(field, bit.name());
		field.setToolTipText(bit.name());
		field.setMessage(bit.hint());
		listen(field);
	}

	private void sentence(Text field) {
		control = field;
		Accessible.name(field, bit.name());
		field.setToolTipText(bit.name());
		field.setMessage(bit.hint());
		field.addTraverseListener(event -> {
			if (event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
				event.doit = true;
			}
		});
		field.addListener(SWT.KeyDown, event -> {
			if ((event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) && event.stateMask == 0) {
				event.doit = false;
				commit();
			}
		});
		listen(field);
	}

	private void listen(Text field) {
		text = field;
		field.addFocusListener(FocusListener.focusLostAdapter(event -> {
			if (names == null || !names.isOpen()) {
				commit();
			} else {
				// the list may have gone by then, and nothing have been chosen from it
				field.getDisplay().asyncExec(() -> {
					if (!field.isDisposed() && !field.isFocusControl() && !names.isOpen()) {
						commit();
					}
				});
			}
		}));
		field.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> commit()));
		field.addModifyListener(event -> {
			if (field.isFocusControl() && (!field.getText().equals(bit.value()) || !refused.isEmpty())) {
				if (bit.kind() == Bit.Kind.SENTENCE) {
					doing.fit();
				}
				waitForPause();
			}
			doing.typed();
		});
	}

	/** Who types on without a pause has it written now and then, so that little is lost if the power goes. */
	private void waitForPause() {
		long now = System.currentTimeMillis();
		waiting = waiting == 0 ? now : waiting;
		Display.getCurrent().timerExec((int) Math.max(1, Math.min(PAUSE, waiting + MOST_WAITING - now)), pause);
	}

	/** Returns whether something is typed that can be written and is not in the text yet. */
	boolean isTyping() {
		return text != null && !text.isDisposed() && text.getEditable() && !text.getText().strip().equals(bit.value()) && !text.getText().equals(refused)
				&& !text.getText().equals(done);
	}

	/** Names are only written when somebody is done with them: half a title means nothing. */
	private void paused() {
		if (text != null && !text.isDisposed() && names == null) {
			commit();
		}
	}

	private void chosen(Change.Named named) {
		if (named.isFresh()) {
			sent = named.title();
			doing.add(line.key(), bit.path(), names.addable(), named.title(), answer(named.title(), busy));
			return;
		}
		send(named.title(), new Change.Fill(bit.path(), named.name(), List.of(named)), busy);
	}

	private void commit() {
		if (text.isDisposed() || !text.getEditable()) {
			return;
		}
		text.getDisplay().timerExec(-1, pause);
		waiting = 0;
		String typed = text.getText();
		if (typed.strip().equals(bit.value())) {
			if (!refused.isEmpty()) {
				// it was put right
				putRight();
			}
			return;
		}
		if (typed.equals(refused) || typed.equals(sent) || typed.equals(done)) {
			return;
		}
		send(typed, new Change.Fill(bit.path(), typed, names == null ? List.of() : names.known()), () -> {
		});
	}

	private void send(String typed, Change.Fill change, Runnable first) {
		sent = typed;
		Consumer<String> answer = answer(typed, first);
		if (names != null && !typed.isBlank() && change.known().isEmpty()) {
			doing.fillName(line.key(), change, answer);
		} else {
			doing.change(line.key(), change, answer);
		}
	}

	private Consumer<String> answer(String typed, Runnable first) {
		return why -> {
			first.run();
			sent = null;
			refused = why.isEmpty() ? "" : typed;
			doing.refuse(line.key(), bit.path(), refused);
			done = why.isEmpty() ? typed : null;
			say.accept(why);
		};
	}

	/** Takes back what is being typed; returns whether there was anything. */
	boolean takeBack() {
		if (text == null || text.isDisposed() || !text.isFocusControl() || text.getText().strip().equals(bit.value())) {
			return false;
		}
		text.getDisplay().timerExec(-1, pause);
		text.setText(bit.value());
		text.setSelection(bit.value().length());
		putRight();
		return true;
	}

	private void putRight() {
		refused = "";
		doing.refuse(line.key(), bit.path(), "");
		say.accept("");
	}

	void flush() {
		picked();
		if (text != null && !text.isDisposed()) {
			commit();
		}
	}

	/** The control goes; nothing is written for it any more. */
	void gone() {
		if (control != null && !control.isDisposed()) {
			control.getDisplay().timerExec(-1, pause);
			control.getDisplay().timerExec(-1, picked);
		}
	}

	/** Shows what is filled in now. What somebody is typing stays. */
	void show(Bit now) {
		Bit old = bit;
		bit = now;
		if (text != null) {
			boolean typing = text.isFocusControl() && !text.getText().equals(old.value()) && !text.getText().equals(done)
					&& !text.getText().strip().equals(now.value());
			if (names != null) {
				names.show(now.value());
				LineLayout.Place place = (LineLayout.Place) control.getLayoutData();
				control.setLayoutData(new LineLayout.Place(width(), place.grows(), place.breaks(), place.indent()));
			}
			if (!typing && refused.isEmpty() && !text.getText().equals(now.value()) && !(text.isFocusControl() && text.getText().strip().equals(now.value()))) {
				int caret = text.getCaretPosition();
				text.setText(now.value());
				text.setSelection(Math.min(caret, now.value().length()));
			}
			done = null;
		} else if (control instanceof Hyperlink link) {
			if (now.kind() == Bit.Kind.NAME && !link.getText().equals(now.value())) {
				link.setText(now.value());
			}
		} else if (control instanceof Combo combo) {
			int at = -1;
			for (int i = 0; i < now.options().size(); i++) {
				boolean same = now.written().isEmpty() ? now.options().get(i).number() < 0 : now.options().get(i).number() == Integer.parseInt(now.written());
				at = same ? i : at;
			}
			// what is being chosen stays
			boolean choosing = combo.isFocusControl() && combo.getSelectionIndex() != chosen;
			chosen = at;
			if (at < 0 && !choosing) {
				combo.deselectAll();
			} else if (combo.getSelectionIndex() != at && !choosing) {
				combo.select(at);
			}
		} else if (control instanceof Button flag) {
			flag.setSelection(!now.written().isEmpty());
		}
	}
}
