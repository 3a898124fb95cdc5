package org.baywright.workbench.editor;

import java.util.List;
import java.util.Locale;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.colour.Colour;
import org.baywright.language.ide.colour.Coloured;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.jface.text.presentation.IPresentationDamager;
import org.eclipse.jface.text.presentation.IPresentationReconciler;
import org.eclipse.jface.text.presentation.IPresentationRepairer;
import org.eclipse.jface.util.IPropertyChangeListener;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;

/** Colours words by what they mean, in the colours of the theme. */
public final class Colours extends TextWorker<List<Coloured>> implements IPresentationReconciler {

	private static final String PREFIX = "org.baywright.workbench.colour.";

	private final IPropertyChangeListener themed = event -> {
		if (event.getProperty().startsWith(PREFIX)) {
			shown = List.of();
			again();
		}
	};
	private List<Coloured> shown = List.of();
	private int shownLength = -1;

	/** Made by the platform. */
	public Colours() {
		super(40);
	}

	@Override
	public void install(ITextViewer viewer) {
		super.install(viewer);
		JFaceResources.getColorRegistry().addListener(themed);
	}

	@Override
	public void uninstall() {
		JFaceResources.getColorRegistry().removeListener(themed);
		super.uninstall();
	}

	@Override
	boolean followsProject() {
		// what a name is may have been declared in another file by now
		return true;
	}

	@Override
	List<Coloured> ask(EditedFile of) {
		return of.ask((EditorServices services, String path) -> services.colours(path));
	}

	@Override
	void show(ITextViewer in, List<Coloured> answer) {
		int length = in.getDocument().getLength();
		int same = 0;
		if (shownLength >= 0) {
			while (same < answer.size() && same < shown.size() && answer.get(same).equals(shown.get(same))) {
				same++;
			}
		}
		if (same == answer.size() && same == shown.size() && length == shownLength) {
			return;
		}
		// the widget moves the looks of what follows an edit along; only what differs is set again
		int shift = length - shownLength;
		int last = answer.size();
		int lastShown = shown.size();
		while (shownLength >= 0 && last > same && lastShown > same && moved(shown.get(lastShown - 1), shift).equals(answer.get(last - 1))) {
			last--;
			lastShown--;
		}
		int from = same == 0 ? 0 : answer.get(same - 1).offset() + answer.get(same - 1).length();
		int to = last == answer.size() ? length : answer.get(last).offset();
		if (to > from) {
			TextPresentation presentation = new TextPresentation(new Region(from, to - from), 1000);
			presentation.setDefaultStyleRange(new StyleRange(from, to - from, null, null));
			for (Coloured word : answer.subList(same, last)) {
				presentation.addStyleRange(style(word));
			}
			in.changeTextPresentation(presentation, true);
		}
		shown = answer;
		shownLength = length;
	}

	private static Coloured moved(Coloured word, int shift) {
		return new Coloured(word.offset() + shift, word.length(), word.colour(), word.declaration());
	}

	private static StyleRange style(Coloured word) {
		String id = PREFIX + word.colour().name().toLowerCase(Locale.ROOT);
		StyleRange style = new StyleRange(word.offset(), word.length(), JFaceResources.getColorRegistry().get(id), null);
		boolean bold = word.declaration() || word.colour() == Colour.VERDICT || word.colour() == Colour.KEYWORD;
		style.fontStyle = bold ? SWT.BOLD : word.colour() == Colour.COMMENT ? SWT.ITALIC : SWT.NORMAL;
		return style;
	}

	@Override
	public void inputDocumentAboutToBeChanged(IDocument old, IDocument now) {
		super.inputDocumentAboutToBeChanged(old, now);
		shown = List.of();
		shownLength = -1;
	}

	@Override
	public IPresentationDamager getDamager(String contentType) {
		return null;
	}

	@Override
	public IPresentationRepairer getRepairer(String contentType) {
		return null;
	}
}
