package org.baywright.workbench.editor.card;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Change;
import org.baywright.language.ide.card.Labels;
import org.baywright.language.ide.card.Line;
import org.baywright.workbench.Accessible;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceColors;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.forms.events.HyperlinkAdapter;
import org.eclipse.ui.forms.events.HyperlinkEvent;
import org.eclipse.ui.forms.widgets.Hyperlink;

/** Draws one card. It is changed in place as long as the card has the same fields, so that nobody is interrupted. */
final class CardForm {

	/** What is done on the card goes there. */
	interface Doing {

		/**
		 * Does something on a line, as soon as the card is up to date.
		 *
		 * @param answer hears why it cannot be done, or the empty text
		 */
		void change(String line, Change change, Consumer<String> answer);

		/** The same for a name of which it is not known yet what it can mean. */
		void fillName(String line, Change.Fill change, Consumer<String> answer);

		/**
		 * Adds something that is not there yet, and names it at a place of a line.
		 *
		 * @param kind the word of its kind
		 * @param title what it is called
		 */
		void add(String line, List<Integer> path, String kind, String title, Consumer<String> answer);

		/** Notes what was typed at a place of a line and cannot be written; the empty text if there is nothing of it any more. */
		void refuse(String line, List<Integer> path, String typed);

		/** Returns what was typed before at a place of a line and could not be written. */
		Optional<String> refused(String line, List<Integer> path);

		/** Begins one more line of a field, as soon as the card is up to date. */
		void begin(String field, Runnable begun);

		/** Asks what fits at a place of a line. */
		void choices(String line, List<Integer> path, Consumer<List<Change.Named>> answer);

		/** Gives what is named at a place of a line another name, everywhere. */
		void rename(String line, List<Integer> path);

		/** Shows a place in the text. */
		void toText(int offset);

		/** Shows the card once more. */
		void again();

		/** Something on the card is taller or lower than it was. */
		void fit();

		/** Something is typed that is not in the text yet, or there is nothing of it any more. */
		void typed();

		/**
		 * Offers what can be done about what is wrong.
		 *
		 * @param field goes to the field that has it, if one has: the author puts it right there
		 */
		void mend(Line.Trouble trouble, Control beside, Optional<Runnable> field);
	}

	private final ScrolledComposite scroll;
	private final Composite body;
	private final Doing doing;
	private final Set<String> opened = new HashSet<>();
	private List<FieldRow> rows = List.of();
	private List<String> labels = List.of();
	private Card card;
	private Label head;
	private Composite troubles;
	private List<Line.Trouble> told;
	private String open = "";
	/** Whether the mouse is held down on a link: nothing moves until it is let go. */
	private boolean held;

	CardForm(Composite parent, Doing doing) {
		this.doing = doing;
		scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
		scroll.setExpandHorizontal(true);
		scroll.setExpandVertical(true);
		scroll.setShowFocusedControl(true);
		body = new Composite(scroll, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(2).margins(12, 8).spacing(12, 8).applyTo(body);
		scroll.setContent(body);
		scroll.addListener(SWT.Resize, event -> fit());
		scroll.getVerticalBar().setIncrement(20);
		Listener mouse = this::mouse;
		scroll.getDisplay().addFilter(SWT.MouseDown, mouse);
		scroll.getDisplay().addFilter(SWT.MouseUp, mouse);
		scroll.addDisposeListener(event -> {
			event.display.removeFilter(SWT.MouseDown, mouse);
			event.display.removeFilter(SWT.MouseUp, mouse);
		});
	}

	Control control() {
		return scroll;
	}

	private void mouse(Event event) {
		boolean was = held;
		held = event.type == SWT.MouseDown && event.button == 1 && event.widget instanceof Hyperlink link && isOn(link);
		if (was && !held) {
			scroll.getDisplay().asyncExec(() -> {
				if (!scroll.isDisposed()) {
					fit();
					doing.again();
				}
			});
		}
	}

	private boolean isOn(Control control) {
		for (Control at = control; at != null; at = at.getParent()) {
			if (at == body) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether nothing may be drawn just now, as it would pull something away from under the mouse. */
	boolean isHeld() {
		return held;
	}

	/** Shows a card, or a sentence if there is none. */
	void show(Optional<Card> shown) {
		if (shown.isEmpty()) {
			clear();
			label(CardMessages.Nothing, false);
			fit();
			return;
		}
		Card now = shown.get();
		boolean same = card != null && card.isNew() == now.isNew() && card.kind().equals(now.kind());
		boolean written = card != null && card.isNew() && !now.isNew() && card.kind().equals(now.kind());
		boolean other = !same || card.offset() != now.offset() && !card.title().equals(now.title());
		if (other) {
			opened.clear();
		}
		List<Card.Field> fields = now.fields().stream().filter(field -> field.usual() || !field.isBlank() || opened.contains(field.label())).toList();
		List<String> wanted = new ArrayList<>(fields.stream().map(Card.Field::label).toList());
		wanted.add(now.kind() + now.isNew() + now.unread());
		card = now;
		if (!other && wanted.equals(labels)) {
			for (int i = 0; i < rows.size(); i++) {
				rows.get(i).show(fields.get(i));
			}
			head.setText(head());
			troubles();
		} else {
			Optional<FieldRow.Spot> spot = rows.stream().flatMap(row -> row.focus().stream()).findFirst();
			build(fields, wanted);
			if (written) {
				spot.map(FieldRow.Spot::written).ifPresent(this::focus);
			} else if (!other) {
				spot.ifPresent(this::focus);
			}
		}
		fit();
		if (!open.isEmpty()) {
			String label = open;
			open = "";
			rows.stream().filter(row -> row.label().equals(label)).findFirst().ifPresent(FieldRow::setFocus);
		}
	}

	/** Puts the keyboard on a line. */
	void focus(String line) {
		rows.forEach(row -> row.focus(line));
	}

	private void focus(FieldRow.Spot spot) {
		rows.stream().filter(row -> row.focus(spot)).findFirst();
	}

	private void clear() {
		for (Control child : body.getChildren()) {
			child.dispose();
		}
		rows = List.of();
		labels = List.of();
		troubles = null;
		head = null;
		card = null;
	}

	private void build(List<Card.Field> fields, List<String> wanted) {
		Card now = card;
		body.setRedraw(false);
		clear();
		card = now;
		labels = wanted;
		head = label("", true);
		head.setText(head());
		if (card.isNew()) {
			label(CardMessages.NewHint, false);
		}
		card.unread().ifPresent(unread -> {
			label(unread.sentence(), false);
			link(body, CardMessages.ToText, "", () -> doing.toText(unread.offset()));
		});
		List<FieldRow> made = new ArrayList<>();
		for (Card.Field field : fields) {
			made.add(new FieldRow(body, field, doing));
		}
		rows = List.copyOf(made);
		troubles = new Composite(body, SWT.NONE);
		GridLayoutFactory.fillDefaults().spacing(0, 2).applyTo(troubles);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(troubles);
		told = null;
		troubles();
		List<Card.Field> rest = card.fields().stream().filter(field -> !fields.contains(field)).toList();
		if (!rest.isEmpty()) {
			Label also = new Label(body, SWT.NONE);
			also.setText(CardMessages.More);
			GridDataFactory.fillDefaults().align(SWT.END, SWT.BEGINNING).applyTo(also);
			Composite more = new Composite(body, SWT.NONE);
			more.setLayout(new LineLayout());
			GridDataFactory.fillDefaults().grab(true, false).applyTo(more);
			for (Card.Field field : rest) {
				link(more, "+ " + field.label(), FieldRow.plain(field.help()), () -> {
					opened.add(field.label());
					open = field.label();
					show(Optional.of(card));
				});
			}
		}
		body.setRedraw(true);
	}

	private String head() {
		String kind = Labels.element(card.kind());
		String said = card.isNew() ? CardMessages.bind(CardMessages.NewCard, kind)
				: card.title().isEmpty() ? kind : CardMessages.bind(CardMessages.Head, kind, card.title());
		return said.replace("&", "&&");
	}

	/** Shows what is wrong with the element as a whole. */
	private void troubles() {
		if (troubles == null || card.troubles().equals(told)) {
			return;
		}
		told = card.troubles();
		for (Control child : troubles.getChildren()) {
			child.dispose();
		}
		told.forEach(trouble -> FieldRow.trouble(troubles, trouble, doing, Optional.empty()));
		troubles.setVisible(!told.isEmpty());
		((GridData) troubles.getLayoutData()).exclude = told.isEmpty();
	}

	private Label label(String text, boolean big) {
		Label label = new Label(body, SWT.WRAP);
		label.setText(text.replace("&", "&&"));
		if (big) {
			label.setFont(JFaceResources.getHeaderFont());
		}
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(100, SWT.DEFAULT).applyTo(label);
		return label;
	}

	static Hyperlink link(Composite parent, String text, String hint, Runnable pressed) {
		Hyperlink link = new Hyperlink(parent, SWT.NONE);
		link.setText(text);
		if (!hint.isEmpty()) {
			link.setToolTipText(hint);
			Accessible.name(link, text.length() > 1 ? text : hint);
		}
		link.setForeground(JFaceColors.getHyperlinkText(parent.getDisplay()));
		link.addHyperlinkListener(new HyperlinkAdapter() {
			@Override
			public void linkActivated(HyperlinkEvent event) {
				pressed.run();
			}
		});
		return link;
	}

	/** Gives the form the height that its width asks for. */
	void fit() {
		if (held) {
			return;
		}
		// what is moved may lose its caret
		Text typing = scroll.getDisplay().getFocusControl() instanceof Text field ? field : null;
		Point selected = typing == null ? null : typing.getSelection();
		int caret = typing == null ? 0 : typing.getCaretPosition();
		Rectangle area = scroll.getClientArea();
		Point size = body.computeSize(area.width, SWT.DEFAULT, true);
		scroll.setMinSize(0, size.y);
		body.layout(true, true);
		if (typing != null && !typing.isDisposed() && !(typing.getSelection().equals(selected) && typing.getCaretPosition() == caret)) {
			typing.setSelection(selected);
		}
	}

	/** Writes what was typed and is not in the text yet. */
	void flush() {
		rows.forEach(FieldRow::flush);
	}

	boolean isTyping() {
		return rows.stream().anyMatch(FieldRow::isTyping);
	}

	boolean takeBack() {
		return rows.stream().anyMatch(FieldRow::takeBack);
	}

	void setFocus() {
		if (rows.isEmpty()) {
			scroll.setFocus();
		} else {
			rows.get(0).setFocus();
		}
	}
}
