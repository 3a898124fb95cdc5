package org.baywright.workbench.editor;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.mining.Mining;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.preference.Preferences;
import org.baywright.workbench.project.LiveState;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.codemining.AbstractCodeMiningProvider;
import org.eclipse.jface.text.codemining.ICodeMining;
import org.eclipse.jface.text.codemining.LineHeaderCodeMining;
import org.eclipse.jface.text.source.ISourceViewerExtension5;

/** Tells above each element how it is used: by how many rules, confirmed by which, fired by how many finished jobs. */
public final class Notes extends AbstractCodeMiningProvider {

	private Optional<EditedFile> followed = Optional.empty();
	private Consumer<LiveState> heard;

	@Override
	public CompletableFuture<List<? extends ICodeMining>> provideCodeMinings(ITextViewer viewer, IProgressMonitor monitor) {
		Optional<EditedFile> edited = EditedFile.of(viewer.getDocument());
		if (edited.isEmpty() || !Preferences.showNotes()) {
			return CompletableFuture.completedFuture(List.of());
		}
		follow(edited.get(), viewer);
		return CompletableFuture.supplyAsync(() -> notes(edited.get()));
	}

	private synchronized void follow(EditedFile edited, ITextViewer viewer) {
		if (followed.isPresent() && followed.get().document() == edited.document()) {
			return;
		}
		unfollow();
		followed = Optional.of(edited);
		heard = state -> {
			if (state.isFresh() && viewer instanceof ISourceViewerExtension5 notes) {
				notes.updateCodeMinings();
			}
		};
		edited.project().addListener(heard);
	}

	private void unfollow() {
		followed.ifPresent(of -> of.project().removeListener(heard));
		followed = Optional.empty();
	}

	private List<ICodeMining> notes(EditedFile edited) {
		try {
			var report = edited.project().state().checked().map(LiveState.Checked::report);
			List<Mining> minings = edited.ask((EditorServices services, String path) -> services.minings(path, report));
			// several things may be declared in one line: their notes stand beside each other
			Map<Integer, String> lines = new TreeMap<>();
			IDocument document = edited.document();
			for (Mining mining : minings) {
				lines.merge(document.getLineOfOffset(mining.offset()), mining.text(), (a, b) -> a + "  \u00b7  " + b);
			}
			// the text may change between two of them; the platform cannot draw a line that has got two
			Map<Integer, ICodeMining> notes = new TreeMap<>();
			for (Map.Entry<Integer, String> line : lines.entrySet()) {
				Note note = new Note(line.getKey(), document, this, line.getValue());
				notes.put(note.getPosition().getOffset(), note);
			}
			return List.copyOf(notes.values());
		} catch (BadLocationException e) {
			// the text has changed meanwhile; the next call sees the new one
			return List.of();
		} catch (RuntimeException e) {
			Baywright.log("The notes of " + edited.path() + " cannot be told.", e);
			return List.of();
		}
	}

	@Override
	public synchronized void dispose() {
		unfollow();
		super.dispose();
	}

	private static final class Note extends LineHeaderCodeMining {

		Note(int line, IDocument document, Notes provider, String text) throws BadLocationException {
			super(line, document, provider);
			setLabel(text);
		}

		@Override
		protected CompletableFuture<Void> doResolve(ITextViewer viewer, IProgressMonitor monitor) {
			return CompletableFuture.completedFuture(null);
		}
	}
}
