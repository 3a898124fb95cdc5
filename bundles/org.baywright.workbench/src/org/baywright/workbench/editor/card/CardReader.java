package org.baywright.workbench.editor.card;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

import org.baywright.analysis.Report;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Drafts;
import org.baywright.workbench.editor.EditedFile;
import org.baywright.workbench.editor.TextWorker;
import org.baywright.workbench.project.LiveState;
import org.eclipse.jface.text.ITextViewer;

/** Reads what the card shows, on a worker. */
final class CardReader extends TextWorker<CardReader.Shown> {

	/**
	 * What is wanted.
	 *
	 * @param offset a place within the element
	 * @param kind the kind of the element that is to be added; empty if one of the text is shown
	 * @param drafts what is begun on the card
	 */
	record Wanted(int offset, String kind, Drafts drafts) {
	}

	/**
	 * What is to be seen.
	 *
	 * @param wanted what was wanted
	 * @param items the elements of the file
	 * @param card the card; nothing if the file has no element
	 * @param kinds what can be added
	 */
	record Shown(Wanted wanted, List<Card.Item> items, Optional<Card> card, List<String> kinds) {
	}

	private final Supplier<Wanted> wanted;
	private final Consumer<Shown> show;

	CardReader(Supplier<Wanted> wanted, Consumer<Shown> show) {
		super(20);
		this.wanted = wanted;
		this.show = show;
	}

	Optional<EditedFile> file() {
		return edited();
	}

	@Override
	protected boolean followsProject() {
		return true;
	}

	@Override
	protected Shown ask(EditedFile of) {
		Wanted now = wanted.get();
		Optional<Report> report = of.project().state().fresh().map(LiveState.Checked::report);
		return of.ask((EditorServices services, String path) -> new Shown(now, services.cardItems(path), now.kind().isEmpty()
				? services.card(path, now.offset(), now.drafts(), report) : services.blankCard(path, now.kind(), now.drafts()), services.cards().kinds()));
	}

	@Override
	protected void show(ITextViewer in, Shown answer) {
		show.accept(answer);
	}
}
