package org.baywright.workbench.editor.card;

import java.util.Set;
import java.util.function.BooleanSupplier;

import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.util.IPropertyChangeListener;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.eclipse.ui.texteditor.IUpdate;

/** An action of the text that works on the field with the keyboard while the card is in front. */
public class CardActions extends Action implements IUpdate {

	private static final Set<String> IN_FIELDS = Set.of(ITextEditorActionConstants.CUT, ITextEditorActionConstants.COPY,
			ITextEditorActionConstants.PASTE, ITextEditorActionConstants.DELETE, ITextEditorActionConstants.SELECT_ALL);
	private final String id;
	private final IAction text;
	private final BooleanSupplier cardInFront;

	private CardActions(String id, IAction text, BooleanSupplier cardInFront) {
		this.id = id;
		this.text = text;
		this.cardInFront = cardInFront;
		setText(text.getText());
		setToolTipText(text.getToolTipText());
		setImageDescriptor(text.getImageDescriptor());
		setDisabledImageDescriptor(text.getDisabledImageDescriptor());
		setActionDefinitionId(text.getActionDefinitionId());
		setId(text.getId());
		IPropertyChangeListener changed = event -> {
			setText(text.getText());
			firePropertyChange(ENABLED, null, isEnabled());
		};
		text.addPropertyChangeListener(changed);
	}

	/**
	 * Returns an undo that first does something else.
	 *
	 * @param text undoes the last change of the text
	 * @param first tries something else; whether that was done
	 */
	public static IAction undo(IAction text, BooleanSupplier first) {
		return new CardActions(ITextEditorActionConstants.UNDO, text, () -> false) {
			@Override
			public void run() {
				if (!first.getAsBoolean()) {
					super.run();
				}
			}
		};
	}

	/** Returns the action, or, if it has another meaning on a card, one that does what fits the page in front. */
	public static IAction of(String id, IAction text, BooleanSupplier cardInFront) {
		return text != null && !(text instanceof CardActions) && IN_FIELDS.contains(id) ? new CardActions(id, text, cardInFront) : text;
	}

	@Override
	public boolean isEnabled() {
		// Action's constructor asks before there is anything to ask
		return cardInFront == null || cardInFront.getAsBoolean() || text.isEnabled();
	}

	/** The editor says that other words are chosen. */
	@Override
	public void update() {
		if (text instanceof IUpdate updated) {
			updated.update();
		}
	}

	@Override
	public void runWithEvent(Event event) {
		run();
	}

	@Override
	public void run() {
		if (!cardInFront.getAsBoolean()) {
			text.run();
			return;
		}
		Control focus = Display.getCurrent().getFocusControl();
		if (focus instanceof Text field) {
			inText(field);
		}
	}

	private void inText(Text field) {
		if (id.equals(ITextEditorActionConstants.CUT)) {
			field.cut();
		} else if (id.equals(ITextEditorActionConstants.COPY)) {
			field.copy();
		} else if (id.equals(ITextEditorActionConstants.PASTE)) {
			field.paste();
		} else if (id.equals(ITextEditorActionConstants.SELECT_ALL)) {
			field.selectAll();
		} else if (field.getEditable()) {
			delete(field);
		}
	}

	private static void delete(Text field) {
		if (field.getSelectionCount() == 0) {
			int at = field.getCaretPosition();
			field.setSelection(at, Math.min(at + 1, field.getCharCount()));
		}
		field.insert("");
	}
}
