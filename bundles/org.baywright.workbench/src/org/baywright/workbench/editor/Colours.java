package org.baywright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.colour.Colour;
import org.baywright.language.ide.colour.Coloured;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextListener;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.TextEvent;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.jface.text.presentation.IPresentationDamager;
import org.eclipse.jface.text.presentation.IPresentationReconciler;
import org.eclipse.jface.text.presentation.IPresentationRepairer;
import org.eclipse.jface.util.IPropertyChangeListener;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;

/** Colours words by what they mean, in the colours of the theme. */
public final class Colours extends TextWorker<List<Coloured>> implements IPresentationReconciler, ITextListener {

	private static final String PREFIX = "org.baywright.workbench.colour.";

	private final IPropertyChangeListener themed = event -> {
		if (event.getProperty().startsWith(PREFIX)) {
			forget();
			again();
		}
	};
	private List<Coloured> shown = List.of();
	private boolean blank = true;

	/** Made by the platform. */
	public Colours() {
		super(40);
	}

	@Override
	public void install(ITextViewer viewer) {
		super.install(viewer);
		viewer.addTextListener(this);
		JFaceResources.getColorRegistry().addListener(themed);
	}

	@Override
	public void uninstall() {
		JFaceResources.getColorRegistry().removeListener(themed);
		if (viewer() != null) {
			viewer().removeTextListener(this);
		}
		super.uninstall();
	}

	@Override
	protected boolean followsProject() {
		// what a name is may have been declared in another file by now
		return true;
	}

	@Override
	protected List<Coloured> ask(EditedFile of) {
		return of.ask((EditorServices services, String path) -> services.colours(path));
	}

	@Override
	protected void show(ITextViewer in, List<Coloured> answer) {
		int same = 0;
		while (same < answer.size() && same < shown.size() && answer.get(same).equals(shown.get(same))) {
			same++;
		}
		int last = answer.size();
		int lastShown = shown.size();
		while (last > same && lastShown > same && shown.get(lastShown - 1).equals(answer.get(last - 1))) {
			last--;
			lastShown--;
		}
		int length = in.getDocument().getLength();
		int from = same == 0 ? 0 : answer.get(same - 1).offset() + answer.get(same - 1).length();
		int to = last == answer.size() ? length : answer.get(last).offset();
		boolean differs = last > same || lastShown > same || blank;
		if (differs && to > from) {
			// the size is a hint, which must not be 0
			TextPresentation presentation = new TextPresentation(new Region(from, to - from), Math.max(1, last - same));
			presentation.setDefaultStyleRange(new StyleRange(from, to - from, null, null));
			answer.subList(same, last).forEach(word -> presentation.addStyleRange(style(word)));
			in.changeTextPresentation(presentation, true);
		}
		shown = answer;
		blank = false;
	}

	/** The widget moves looks along with an edit and drops those of what goes; only what differs is set again. */
	@Override
	public void documentChanged(DocumentEvent event) {
		int end = event.getOffset() + event.getLength();
		int shift = event.getText() == null ? -event.getLength() : event.getText().length() - event.getLength();
		List<Coloured> kept = new ArrayList<>(shown.size());
		for (Coloured word : shown) {
			if (word.offset() + word.length() <= event.getOffset()) {
				kept.add(word);
			} else if (word.offset() >= end) {
				kept.add(new Coloured(word.offset() + shift, word.length(), word.colour(), word.declaration()));
			}
		}
		shown = kept;
		super.documentChanged(event);
	}

	/** All looks are lost when the viewer shows its text anew, as it does when folding begins. */
	@Override
	public void textChanged(TextEvent event) {
		if (event.getDocumentEvent() == null && event.getViewerRedrawState()) {
			forget();
			again();
		}
	}

	private void forget() {
		shown = List.of();
		blank = true;
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
		forget();
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
