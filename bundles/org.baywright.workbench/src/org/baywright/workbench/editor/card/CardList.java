package org.baywright.workbench.editor.card;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;

import org.baywright.language.ide.card.Card;
import org.baywright.workbench.Accessible;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;

/** The elements of a file, to choose from. */
final class CardList {

	private final Text filter;
	private final Table list;
	private final Predicate<Card.Item> begun;
	private List<Card.Item> items = List.of();
	private List<Card.Item> listed = List.of();
	private Optional<Card> card = Optional.empty();

	/**
	 * @param begun whether something was begun of an element that is not written yet
	 * @param chosen hears which element is chosen
	 */
	CardList(Composite parent, Predicate<Card.Item> begun, Consumer<Card.Item> chosen) {
		this.begun = begun;
		filter = new Text(parent, SWT.SEARCH | SWT.ICON_CANCEL);
		filter.setMessage(CardMessages.Filter);
		Accessible.name(filter, CardMessages.Filter);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(filter);
		filter.addModifyListener(event -> list());
		list = new Table(parent, SWT.BORDER | SWT.SINGLE | SWT.V_SCROLL | SWT.FULL_SELECTION);
		Accessible.name(list, CardMessages.Elements);
		GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(80, 60).applyTo(list);
		list.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			int at = list.getSelectionIndex();
			if (at >= 0 && at < listed.size()) {
				chosen.accept(listed.get(at));
			}
		}));
	}

	/** Shows elements, and which of them the card shows. */
	void show(List<Card.Item> now, Optional<Card> shown) {
		items = now;
		card = shown;
		list();
	}

	void deselect() {
		list.deselectAll();
	}

	private void list() {
		String typed = filter.getText().toLowerCase(Locale.ROOT);
		List<Card.Item> found = items.stream().filter(item -> (item.kind() + " " + item.title()).toLowerCase(Locale.ROOT).contains(typed)).toList();
		list.setRedraw(false);
		for (int i = 0; i < found.size(); i++) {
			Card.Item item = found.get(i);
			TableItem row = i < list.getItemCount() ? list.getItem(i) : new TableItem(list, SWT.NONE);
			String text = begun.test(item) ? CardMessages.bind(CardMessages.Begun, item.title()) : item.title();
			if (!row.getText().equals(text)) {
				row.setText(text);
			}
			if (row.getImage() != KindIcon.of(item.kind())) {
				row.setImage(KindIcon.of(item.kind()));
			}
		}
		if (list.getItemCount() > found.size()) {
			list.remove(found.size(), list.getItemCount() - 1);
		}
		listed = found;
		list.setRedraw(true);
		select();
	}

	private void select() {
		int at = -1;
		for (int i = 0; i < listed.size() && card.isPresent() && !card.get().isNew(); i++) {
			at = listed.get(i).offset() == card.get().offset() ? i : at;
		}
		if (at < 0) {
			list.deselectAll();
		} else if (list.getSelectionIndex() != at) {
			list.setSelection(at);
		}
	}
}
