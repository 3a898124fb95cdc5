package org.baywright.workbench.editor;

import java.util.Optional;

import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.ITextInputListener;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.reconciler.IReconciler;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;

/** Tells the project what an editor's text is, from the first key on, and that it is that of the disk again at the end. */
public final class Following implements IReconciler, IDocumentListener, ITextInputListener {

	private ITextViewer viewer;
	private Optional<EditedFile> followed = Optional.empty();

	@Override
	public void install(ITextViewer textViewer) {
		viewer = textViewer;
		viewer.addTextInputListener(this);
		// only later is there all that it asks for
		viewer.getTextWidget().getDisplay().asyncExec(() -> AssistSession.of(textViewer));
		follow(viewer.getDocument());
	}

	@Override
	public void uninstall() {
		if (viewer != null) {
			viewer.removeTextInputListener(this);
			unfollow();
		}
	}

	private void follow(IDocument document) {
		followed = EditedFile.of(document);
		followed.ifPresent(edited -> edited.document().addDocumentListener(this));
	}

	private void unfollow() {
		followed.ifPresent(edited -> {
			edited.document().removeDocumentListener(this);
			Unsaved.forget(edited.file());
			edited.project().reload(edited.file());
		});
		followed = Optional.empty();
	}

	@Override
	public void documentAboutToBeChanged(DocumentEvent event) {
		// what matters is what comes of it
	}

	@Override
	public void documentChanged(DocumentEvent event) {
		followed.ifPresent(edited -> {
			String text = edited.document().get();
			edited.project().edit(edited.file(), text);
			Unsaved.note(edited.file(), text);
		});
	}

	@Override
	public void inputDocumentAboutToBeChanged(IDocument old, IDocument now) {
		unfollow();
	}

	@Override
	public void inputDocumentChanged(IDocument old, IDocument now) {
		follow(now);
	}

	@Override
	public IReconcilingStrategy getReconcilingStrategy(String contentType) {
		return null;
	}
}
