package org.baywright.workbench.editor.card;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.baywright.language.ide.card.Change;
import org.baywright.workbench.Accessible;
import org.eclipse.jface.bindings.keys.KeyStroke;
import org.eclipse.jface.fieldassist.ContentProposal;
import org.eclipse.jface.fieldassist.ContentProposalAdapter;
import org.eclipse.jface.fieldassist.IContentProposal;
import org.eclipse.jface.fieldassist.TextContentAdapter;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;

/** A field for the name of something: shows its title, and offers the titles of what fits. */
final class NameBox extends Composite {

	private final Text text;
	private final Opening opening;
	private List<Change.Named> known = List.of();
	private String shown = "";
	/** Whether somebody has gone through the list that is open. */
	private boolean moved;

	/** Asks what fits; the answer comes on the screen's thread. */
	interface Asking {
		void ask(Consumer<List<Change.Named>> answer);
	}

	/**
	 * @param name what it is called
	 * @param asking asks what fits
	 * @param chosen hears of what is chosen from the list
	 */
	NameBox(Composite parent, String name, Asking asking, Consumer<Change.Named> chosen) {
		super(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(2).spacing(0, 0).applyTo(this);
		text = new Text(this, SWT.BORDER | SWT.SINGLE);
		Accessible.name(text, name);
		text.setToolTipText(name);
		GridDataFactory.fillDefaults().grab(true, false).hint(20, SWT.DEFAULT).applyTo(text);
		Button arrow = new Button(this, SWT.ARROW | SWT.DOWN);
		arrow.setToolTipText(CardMessages.bind(CardMessages.Choose, name));
		Accessible.name(arrow, CardMessages.bind(CardMessages.Choose, name));
		GridDataFactory.fillDefaults().align(SWT.CENTER, SWT.FILL).applyTo(arrow);
		text.addListener(SWT.Traverse, event -> {
			if (event.detail == SWT.TRAVERSE_TAB_NEXT && isOpen()) {
				take(chosen);
				event.doit = true;
			}
		});
		text.addListener(SWT.KeyDown, event -> moved |= isOpen() && (event.keyCode == SWT.ARROW_DOWN || event.keyCode == SWT.ARROW_UP));
		opening = new Opening(text);
		opening.setProposalAcceptanceStyle(ContentProposalAdapter.PROPOSAL_REPLACE);
		opening.setPropagateKeys(true);
		opening.addContentProposalListener(proposal -> chosen.accept(((Offered) proposal).named()));
		Runnable open = () -> asking.ask(found -> {
			known = found;
			if (!text.isDisposed() && text.isFocusControl()) {
				opening.open(Math.max(260, getSize().x));
			}
		});
		arrow.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			text.setFocus();
			open.run();
		}));
		text.addMouseListener(MouseListener.mouseUpAdapter(event -> {
			if (event.button == 1 && text.getSelectionCount() == 0 && text.getText().isEmpty()) {
				open.run();
			}
		}));
		text.addModifyListener(event -> {
			if (text.isFocusControl() && !text.getText().equals(shown) && known.isEmpty()) {
				asking.ask(found -> known = found);
			}
		});
	}

	/** Takes what is chosen in the list, or what was typed means, and closes the list: without that Tab would go into it. */
	private void take(Consumer<Change.Named> chosen) {
		String typed = text.getText().strip();
		if (moved) {
			Event enter = new Event();
			enter.character = SWT.CR;
			enter.keyCode = SWT.CR;
			text.notifyListeners(SWT.KeyDown, enter);
		} else if (!typed.isEmpty() && !typed.equals(shown)) {
			List<Change.Named> fitting = fitting(typed);
			fitting.stream().filter(one -> one.title().equalsIgnoreCase(typed)).findFirst().or(() -> fitting.stream().findFirst()).ifPresent(named -> {
				text.setText(named.title());
				chosen.accept(named);
			});
		}
		opening.close();
	}

	Text text() {
		return text;
	}

	List<Change.Named> known() {
		return known;
	}

	boolean isOpen() {
		return opening.isProposalPopupOpen();
	}

	/** Shows a title; what is being typed stays. */
	void show(String title) {
		shown = title;
		known = List.of();
	}

	@Override
	public boolean setFocus() {
		return text.setFocus();
	}

	/** One thing that can be chosen. */
	private static final class Offered extends ContentProposal {
		private final Change.Named named;

		Offered(Change.Named named) {
			super(named.title(), named.isFresh() ? named.detail() : named.detail().isEmpty() ? named.title() : named.title() + " \u2013 " + named.detail(), null);
			this.named = named;
		}

		Change.Named named() {
			return named;
		}
	}

	private List<Change.Named> fitting(String typed) {
		String small = typed.toLowerCase(Locale.ROOT);
		boolean all = typed.equals(shown);
		return known.stream().filter(one -> !one.isFresh() && (all || one.title().toLowerCase(Locale.ROOT).contains(small) || one.name().contains(small)))
				.toList();
	}

	/** What fits, and behind it the offer to add what is typed if nothing is called so yet. */
	private List<Offered> offered(String typed) {
		List<Change.Named> fitting = fitting(typed);
		String title = typed.strip();
		boolean there = title.isEmpty() || title.equals(shown) || fitting.stream().anyMatch(one -> one.title().equalsIgnoreCase(title));
		return Stream.concat(fitting.stream(), known.stream().filter(one -> one.isFresh() && !there)
				.map(kind -> new Change.Named("", title, CardMessages.bind(CardMessages.AddNew, kind.title(), title)))).map(Offered::new).toList();
	}

	/** Returns the kind of what can be added here. */
	String addable() {
		return known.stream().filter(Change.Named::isFresh).findFirst().map(Change.Named::title).orElse("");
	}

	private final class Opening extends ContentProposalAdapter {

		Opening(Text of) {
			super(of, new TextContentAdapter(), (contents, position) -> offered(contents).toArray(IContentProposal[]::new),
					KeyStroke.getInstance(SWT.ARROW_DOWN), null);
		}

		void open(int width) {
			moved = false;
			setPopupSize(new Point(width, 220));
			openProposalPopup();
		}

		void close() {
			closeProposalPopup();
		}
	}
}
