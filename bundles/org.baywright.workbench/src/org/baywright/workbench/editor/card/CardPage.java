package org.baywright.workbench.editor.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Cards;
import org.baywright.language.ide.card.Change;
import org.baywright.language.ide.card.Drafts;
import org.baywright.language.ide.card.Labels;
import org.baywright.language.ide.card.Line;
import org.baywright.language.ide.names.Use;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.model.Span;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.editor.EditedFile;
import org.baywright.workbench.editor.RenameName;
import org.baywright.workbench.editor.Resolutions;
import org.baywright.workbench.editor.TextChanges;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.BadPositionCategoryException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRewriteTarget;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.texteditor.ITextEditor;

/** The second page of the editor: the elements of the file, and a form for the one that is chosen. */
public final class CardPage implements CardForm.Doing {

	/** Longer nobody waits for the card to be read anew before what was typed on it is saved; milliseconds. */
	private static final long MOST_WAITING = 3_000;

	private final ITextEditor editor;
	private final Runnable turn;
	private final Composite page;
	private final Runnable typed;
	private final CardList list;
	private final Button add;
	private final Button delete;
	private final CardForm form;
	private final CardReader reader;
	private List<Card.Item> items = List.of();
	private List<String> kinds = List.of();
	private volatile Card card;
	private volatile Drafts drafts = Drafts.NONE;
	/** What was begun when the card was read. */
	private Drafts shownDrafts = Drafts.NONE;
	/** Where the element stands; it moves with the text. */
	private Position place = new Position(0, 0);
	private IDocument placed;
	private volatile CardReader.Wanted wanted = new CardReader.Wanted(0, "", Drafts.NONE);
	private boolean installed;
	private boolean focusSoon;
	/** The card on which a fix was chosen, until one shows what came of it. */
	private Card mended;
	private final Attempts attempts;
	private volatile boolean typing;
	private final KeptDrafts kept = new KeptDrafts();
	/** What was typed on the card that is shown and cannot be written, by its place. */
	private volatile Map<String, String> refused = new ConcurrentHashMap<>();
	/** Whether what was left on the card that is meant now is there again. */
	private boolean resumed;

	/**
	 * @param editor the editor whose second page it is
	 * @param turn brings the page of the text to the front
	 * @param typed hears when something is typed that is not in the text yet, and when there is nothing of it any more
	 */
	public CardPage(Composite parent, ITextEditor editor, Runnable turn, Runnable typed) {
		this.typed = typed;
		this.editor = editor;
		this.turn = turn;
		page = new Composite(parent, SWT.NONE);
		attempts = new Attempts(page);
		page.setLayout(new FillLayout());
		SashForm sash = new SashForm(page, SWT.HORIZONTAL);
		Composite left = new Composite(sash, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(2).margins(6, 6).spacing(4, 4).applyTo(left);
		list = new CardList(left, this::isBegun, this::chosen);
		add = button(left, CardMessages.Add, this::choose);
		delete = button(left, CardMessages.Delete, this::deleteElement);
		form = new CardForm(sash, this);
		sash.setWeights(28, 72);
		reader = new CardReader(() -> wanted, this::show);
		page.addDisposeListener(event -> reader.uninstall());
	}

	private static Button button(Composite parent, String text, Runnable pressed) {
		Button button = new Button(parent, SWT.PUSH);
		button.setText(text);
		button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> pressed.run()));
		GridDataFactory.fillDefaults().grab(true, false).applyTo(button);
		return button;
	}

	/** Returns the control of the page. */
	public Control control() {
		return page;
	}

	/** Shows the element in which the text's cursor stands. */
	public void open() {
		ITextViewer viewer = editor.getAdapter(ITextViewer.class);
		if (!installed && viewer != null) {
			installed = true;
			reader.install(viewer);
		}
		if (editor.getSelectionProvider().getSelection() instanceof ITextSelection selection) {
			go(selection.getOffset());
		}
	}

	/** Shows the element at a place of the text. */
	public void go(int offset) {
		if (card != null && !card.isNew() && wanted.kind().isEmpty() && offset >= place.offset && offset <= place.offset + card.length()) {
			reader.again();
			return;
		}
		leave(() -> {
			placeAt(offset);
			want("");
		});
	}

	/**
	 * The card that is shown is no longer meant: until the other one is read nothing is done on either. What was typed comes
	 * to its line first; of names it has to be asked what they mean.
	 */
	private void leave(Runnable then) {
		attempts.leave(() -> {
			if (card != null) {
				flush();
			}
		}, () -> {
			if (card != null) {
				// until it is chosen, a card is shown for wherever the cursor stands, as above the first element
				boolean within = place.offset >= card.offset() && place.offset < card.offset() + card.length();
				kept.keep(document(), card, within ? place.offset : card.offset(), new KeptDrafts.Left(drafts, Map.copyOf(refused)));
			}
			resumed = false;
			refused = new ConcurrentHashMap<>();
			drafts = Drafts.NONE;
			card = null;
			delete.setEnabled(false);
			then.run();
		});
	}

	private void placeAt(int offset) {
		IDocument document = document();
		if (document == null) {
			return;
		}
		try {
			// a document that was given up has none any more
			if (placed != null && placed.containsPositionCategory(IDocument.DEFAULT_CATEGORY)) {
				placed.removePosition(IDocument.DEFAULT_CATEGORY, place);
			}
			place = new Position(Math.min(offset, document.getLength()), 0);
			document.addPosition(place);
			placed = document;
		} catch (BadLocationException | BadPositionCategoryException e) {
			Baywright.log("The place of a card is gone.", e);
		}
	}

	private IDocument document() {
		return editor.getDocumentProvider() == null ? null : editor.getDocumentProvider().getDocument(editor.getEditorInput());
	}

	private void want(String kind) {
		wanted = new CardReader.Wanted(place.offset, kind, drafts);
		reader.again();
	}

	/** Returns where the element that is shown stands; nothing if none is shown or it is not written yet. */
	public Optional<Position> place() {
		return card == null || card.isNew() ? Optional.empty() : Optional.of(new Position(place.offset, card.length()));
	}

	/** Takes back what is being typed into a field and is not in the text yet; returns whether there was anything. */
	public boolean takeBack() {
		return form.takeBack();
	}

	/** Writes what was typed into a field and is not in the text yet. */
	public void flush() {
		form.flush();
	}

	/** Returns whether something is typed into a field that is not in the text yet; on other threads, as it was known last. */
	public boolean isTyping() {
		// the platform's search asks on a thread of its own whether an editor has changes
		if (Display.getCurrent() != null) {
			typing = !page.isDisposed() && form.isTyping();
		}
		return typing;
	}

	/** Writes what was typed, also while the card is being read anew, as when somebody saves in the middle of it. */
	public void settle() {
		flush();
		long end = System.currentTimeMillis() + MOST_WAITING;
		while (isTyping() && System.currentTimeMillis() < end) {
			if (!page.getDisplay().readAndDispatch()) {
				page.getDisplay().timerExec(20, () -> { }); // so that it wakes up
				page.getDisplay().sleep();
			}
			flush();
		}
	}

	@Override
	public void typed() {
		typed.run();
	}

	/** Puts the keyboard on the first field. */
	public void setFocus() {
		form.setFocus();
	}

	private void show(CardReader.Shown shown) {
		if (page.isDisposed()) {
			return;
		}
		if (place.isDeleted() && wanted.kind().isEmpty() && card != null) {
			again(shown.items());
			return;
		}
		if (!shown.wanted().equals(wanted) || wanted.kind().isEmpty() && wanted.offset() != place.offset) {
			want(wanted.kind());
			return;
		}
		if (form.isHeld()) {
			return;
		}
		Card now = shown.card().orElse(null);
		if (card == null && now != null && !resumed) {
			resumed = true;
			KeptDrafts.Left left = kept.take(now);
			refused = new ConcurrentHashMap<>(left.refused());
			if (drafts.isEmpty() && !left.drafts().isEmpty()) {
				drafts = left.drafts();
				want(wanted.kind());
				return;
			}
		}
		kinds = shown.kinds();
		card = now;
		shownDrafts = shown.wanted().drafts();
		items = shown.items();
		List<Card.Item> all = new ArrayList<>(items);
		all.addAll(kept.fresh());
		list.show(all, shown.card());
		delete.setEnabled(card != null && !card.isNew());
		form.show(shown.card());
		if (focusSoon && card != null) {
			form.setFocus();
		}
		focusSoon = false;
		if (mended != null && card != null && !card.text().equals(mended.text())) {
			// what a fix adds is often still empty
			Card before = mended;
			mended = null;
			card.added(before).ifPresent(line -> form.focus(line.key()));
		}
		// what is begun is not saved
		typed();
	}

	/** Another program has changed the file, so that all of the text is another: shows the same element, where it stands now. */
	private void again(List<Card.Item> now) {
		List<Card.Item> same = now.stream().filter(item -> item.kind().equals(card.kind()) && item.title().equals(card.title())).toList();
		int number = (int) items.stream().filter(item -> item.offset() < card.offset() && item.kind().equals(card.kind())
				&& item.title().equals(card.title())).count();
		placeAt(same.isEmpty() ? place.offset : same.get(Math.min(number, same.size() - 1)).offset());
		want("");
	}

	// ---- the list --------------------------------------------------------------------------------------------------

	/** Returns whether something was begun on the card of an element that is not written yet. */
	private boolean isBegun(Card.Item item) {
		boolean shown = card != null && !card.isNew() && card.offset() == item.offset();
		return item.offset() < 0 || (shown ? !drafts.isBlank() : kept.has(item));
	}

	private void chosen(Card.Item item) {
		if (item.offset() < 0) {
			begin(item.kind());
			return;
		}
		// what is written while the card is left may move it
		Position to = KeptDrafts.position(document(), item.offset());
		leave(() -> {
			document().removePosition(to);
			placeAt(to.offset);
			want("");
			editor.selectAndReveal(to.offset, 0);
		});
	}

	private void choose() {
		MenuManager menu = new MenuManager();
		Card now = card;
		if (now != null && !now.isNew() && now.unread().isEmpty() && !now.title().isEmpty()) {
			menu.add(entry(CardMessages.bind(CardMessages.Duplicate, now.title()), KindIcon.descriptor(now.kind()), this::duplicate));
			menu.add(new Separator());
		}
		kinds.forEach(kind -> {
			Action entry = entry(Labels.entry(kind), KindIcon.descriptor(kind), () -> begin(kind));
			entry.setToolTipText(Labels.explained(kind));
			menu.add(entry);
		});
		open(menu, add, add.toDisplay(0, add.getSize().y));
	}

	/** Writes another element like the one that is shown behind it, and shows that. */
	private void duplicate() {
		flush();
		attempts.attempt(() -> {
			Optional<EditorServices> services = reader.file().flatMap(of -> of.project().ready());
			if (services.isEmpty() || !isCurrent(card) || form.isTyping()) {
				return false;
			}
			services.get().cards().duplicate(card).ifPresent(copy -> {
				apply(List.of(copy));
				int blank = copy.text().length() - copy.text().stripLeading().length();
				leave(() -> {
					placeAt(copy.offset() + blank);
					want("");
					focusSoon = true;
				});
			});
			return true;
		});
	}

	private void begin(String kind) {
		leave(() -> {
			list.deselect();
			want(kind);
			focusSoon = true;
		});
	}

	private void deleteElement() {
		Card now = card;
		EditedFile of = reader.file().orElse(null);
		if (now == null || now.isNew() || of == null) {
			return;
		}
		work(() -> {
			List<Use> uses = of.ask((services, path) -> services.usedElsewhere(now));
			Cards cards = of.ask((services, path) -> services.cards());
			later(() -> {
				boolean sure = uses.isEmpty() || MessageDialog.open(MessageDialog.QUESTION, shell(), CardMessages.bind(CardMessages.DeleteTitle, now.title()),
						CardMessages.bind(CardMessages.DeleteUsed, uses.size(), uses.get(0).file()), SWT.NONE, CardMessages.Keep, CardMessages.DeleteAnyway) == 1;
				if (sure && isCurrent(now)) {
					apply(cards.delete(now));
					refused.clear();
					drafts = Drafts.NONE;
					want("");
				}
			});
		});
	}

	// ---- what is done on the card ----------------------------------------------------------------------------------

	private boolean isCurrent(Card of) {
		IDocument document = document();
		return of != null && document != null && document.get().equals(of.text());
	}

	/** Returns whether the card shows the present text and all that is begun: what is done next builds on both. */
	private boolean isUpToDate() {
		return isCurrent(card) && shownDrafts == drafts;
	}

	@Override
	public void change(String line, Change change, Consumer<String> answer) {
		if (card == null) {
			// what is still to be seen was left
			return;
		}
		attempts.attempt(() -> change(line, change).map(why -> {
			answer.accept(why);
			return true;
		}).isPresent());
	}

	@Override
	public void fillName(String line, Change.Fill change, Consumer<String> answer) {
		EditedFile of = reader.file().orElse(null);
		Card asked = card;
		if (of == null || asked == null) {
			return;
		}
		int begun = attempts.begin();
		work(() -> {
			List<Change.Named> known = of.ask((services, file) -> services.cardChoices(asked, line, change.path()));
			later(() -> {
				if (attempts.end(begun)) {
					change(line, new Change.Fill(change.path(), change.typed(), known), answer);
				}
			});
		});
	}

	@Override
	public void refuse(String line, List<Integer> path, String typed) {
		if (typed.isEmpty() ? refused.remove(line + path) != null : !typed.equals(refused.put(line + path, typed))) {
			typed();
		}
	}

	@Override
	public Optional<String> refused(String line, List<Integer> path) {
		return Optional.ofNullable(refused.get(line + path));
	}

	/** Returns what was typed on cards and cannot be written, each once; may be asked on any thread. */
	public List<String> refused() {
		return Stream.concat(refused.values().stream(), kept.refused()).distinct().sorted().toList();
	}

	/** Returns the elements, in words, on whose cards a line is begun that is not in the text yet; may be asked on any thread. */
	public List<String> begun() {
		Card shown = card;
		Stream<String> here = shown == null || drafts.isBlank() ? Stream.of() : Stream.of(shown.isNew() ? KeptDrafts.newCard(shown.kind()) : shown.title());
		return Stream.concat(here, kept.begun()).distinct().sorted().toList();
	}

	@Override
	public void add(String line, List<Integer> path, String kind, String title, Consumer<String> answer) {
		attempts.attempt(() -> {
			EditedFile of = reader.file().orElse(null);
			Optional<EditorServices> services = of == null ? Optional.empty() : of.project().ready();
			if (services.isEmpty() || !isUpToDate() || card.line(line).isEmpty()) {
				return false;
			}
			answer.accept(done(services.get().cards(), services.get().cardAdding(card, line, path, kind, title, drafts, LocalDate.now())));
			return true;
		});
	}

	@Override
	public void again() {
		reader.again();
	}

	/** Does something on a line; returns why it cannot be done, or the empty text, or nothing while the card is out of date. */
	private Optional<String> change(String line, Change change) {
		EditedFile of = reader.file().orElse(null);
		Cards cards = of == null ? null : of.project().ready().map(services -> services.cards()).orElse(null);
		if (cards == null || !isUpToDate() || card.line(line).isEmpty()) {
			return Optional.empty();
		}
		String why = done(cards, cards.change(card, line, change, drafts, LocalDate.now()));
		if (why.isEmpty() && (change instanceof Change.Delete || change instanceof Change.Remove)) {
			// what was typed there goes with it
			String gone = line + (change instanceof Change.Remove part ? part.path().toString().replace("]", "") : "[");
			refused.keySet().removeIf(place -> place.startsWith(gone));
			typed();
		}
		return Optional.of(why);
	}

	/** Writes what comes of a change; returns why it cannot be done, or the empty text. */
	private String done(Cards cards, Cards.Outcome outcome) {
		if (!outcome.refused().isEmpty()) {
			return outcome.refused();
		}
		drafts = outcome.drafts();
		boolean written = card.isNew() && drafts.isEmpty() && !outcome.edits().isEmpty();
		if (!outcome.edits().isEmpty()) {
			apply(outcome.edits());
		}
		if (written) {
			// a new element stands at the end
			List<Card.Item> all = cards.items(document().get());
			placeAt(all.get(all.size() - 1).offset());
			want("");
		} else {
			want(wanted.kind());
		}
		return "";
	}

	private void apply(List<TextEdit> edits) {
		IRewriteTarget target = editor.getAdapter(IRewriteTarget.class);
		if (target != null) {
			target.beginCompoundChange();
		}
		try {
			TextChanges.together(edits).apply(document());
		} catch (BadLocationException e) {
			Baywright.log("A change of a card does not fit its text.", e);
		} finally {
			if (target != null) {
				target.endCompoundChange();
			}
		}
	}

	@Override
	public void begin(String field, Runnable begun) {
		attempts.attempt(() -> {
			Optional<EditorServices> services = reader.file().flatMap(of -> of.project().ready());
			Optional<Card.Field> more = card == null ? Optional.empty() : card.fields().stream().filter(each -> each.label().equals(field)).findFirst();
			if (services.isEmpty() || more.isEmpty() || !isUpToDate()) {
				return false;
			}
			drafts = services.get().cards().begin(card, more.get(), drafts);
			begun.run();
			want(wanted.kind());
			return true;
		});
	}

	@Override
	public void choices(String line, List<Integer> path, Consumer<List<Change.Named>> answer) {
		Card now = card;
		EditedFile of = reader.file().orElse(null);
		if (now != null && of != null) {
			work(() -> {
				List<Change.Named> found = of.ask((services, file) -> services.cardChoices(now, line, path));
				later(() -> answer.accept(found));
			});
		}
	}

	@Override
	public void rename(String line, List<Integer> path) {
		Card now = card;
		EditedFile of = reader.file().orElse(null);
		if (now != null && of != null) {
			work(() -> {
				Optional<Use> use = of.ask((services, file) -> services.prepareRename(file, services.cards().place(now, line, path)));
				later(() -> use.ifPresent(name -> RenameName.open(shell(), of, name)));
			});
		}
	}

	@Override
	public void fit() {
		form.fit();
	}

	@Override
	public void toText(int offset) {
		turn.run();
		editor.selectAndReveal(offset, 0);
	}

	@Override
	public void mend(Line.Trouble trouble, Control beside, Optional<Runnable> field) {
		Card now = card;
		EditedFile of = reader.file().orElse(null);
		if (now == null || of == null) {
			return;
		}
		Span span = new Span(now.file(), 1, 1, 1, 1, trouble.offset(), trouble.length());
		work(() -> {
			List<String> titles = Resolutions.titles(of.project(), span, trouble.id());
			later(() -> {
				if (titles.isEmpty() && field.isPresent()) {
					field.get().run();
					return;
				}
				offer(titles, title -> {
					mended = card;
					Resolutions.offer(shell(), of.project(), span, trouble.id(), title);
				}, trouble.offset(), beside);
			});
		});
	}

	/** Opens a menu of what can be done about what is wrong at a place. */
	private void offer(List<String> titles, Consumer<String> mend, int offset, Control beside) {
		if (beside.isDisposed()) {
			return;
		}
		MenuManager menu = new MenuManager();
		titles.forEach(title -> menu.add(entry(title, null, () -> mend.accept(title))));
		menu.add(entry(CardMessages.ToText, null, () -> toText(offset)));
		open(menu, beside, Display.getCurrent().getCursorLocation());
	}

	private static void open(MenuManager menu, Control on, Point at) {
		Menu shown = menu.createContextMenu(on);
		shown.setLocation(at);
		shown.setVisible(true);
	}

	private static Action entry(String title, ImageDescriptor icon, Runnable chosen) {
		return new Action(title, icon) {
			@Override
			public void run() {
				chosen.run();
			}
		};
	}

	private Shell shell() {
		return editor.getSite().getShell();
	}

	private static void work(Runnable what) {
		ICoreRunnable run = monitor -> what.run();
		Job job = Job.createSystem("Card", run);
		job.setPriority(Job.INTERACTIVE);
		job.schedule();
	}

	private void later(Runnable what) {
		if (!page.isDisposed()) {
			page.getDisplay().asyncExec(() -> {
				if (!page.isDisposed()) {
					what.run();
				}
			});
		}
	}
}
