package org.baywright.workbench.editor;

import java.util.Optional;
import java.util.function.Consumer;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.LiveState;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentExtension4;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.ITextInputListener;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.custom.StyledText;

/**
 * Asks the language something about a viewer's text whenever the text or what is known of its project has changed, and
 * shows the answer if the text is still the same by then.
 *
 * @param <T> the answer
 */
public abstract class TextWorker<T> implements IDocumentListener, ITextInputListener {

	private static final long NO_STAMP = IDocumentExtension4.UNKNOWN_MODIFICATION_STAMP;

	private final Consumer<LiveState> heard = state -> projectChanged();
	private final long delay;
	private ITextViewer viewer;
	private Optional<EditedFile> edited = Optional.empty();
	private Job job;

	protected TextWorker(long delayMillis) {
		delay = delayMillis;
	}

	/** Asks; called on a worker thread. */
	protected abstract T ask(EditedFile of);

	/** Shows the answer; called on the screen's thread. */
	protected abstract void show(ITextViewer in, T answer);

	/** Returns whether it asks again when anything in the project has changed, not only this text. */
	protected boolean followsProject() {
		return false;
	}

	public void install(ITextViewer of) {
		viewer = of;
		ICoreRunnable work = monitor -> work();
		job = Job.createSystem(getClass().getSimpleName(), work);
		job.setPriority(Job.INTERACTIVE);
		viewer.addTextInputListener(this);
		begin(viewer.getDocument());
	}

	public void uninstall() {
		if (viewer != null) {
			viewer.removeTextInputListener(this);
			end();
			job.cancel();
			viewer = null;
		}
	}

	protected Optional<EditedFile> edited() {
		return edited;
	}

	ITextViewer viewer() {
		return viewer;
	}

	/** Asks soon. */
	public void again() {
		if (job != null && edited.isPresent()) {
			job.schedule(delay);
		}
	}

	private void begin(IDocument document) {
		edited = EditedFile.of(document);
		edited.ifPresent(of -> {
			of.document().addDocumentListener(this);
			of.project().addListener(heard);
			job.schedule();
		});
	}

	private void end() {
		edited.ifPresent(of -> {
			of.document().removeDocumentListener(this);
			of.project().removeListener(heard);
		});
		edited = Optional.empty();
	}

	private void projectChanged() {
		if (followsProject()) {
			again();
		}
	}

	private void work() {
		EditedFile of = edited.orElse(null);
		ITextViewer in = viewer;
		if (of == null || in == null) {
			return;
		}
		long stamp = stamp(of.document());
		T answer;
		try {
			answer = ask(of);
		} catch (RuntimeException e) {
			if (!of.project().isClosed()) {
				Baywright.log(getClass().getSimpleName() + " failed in " + of.path() + ".", e);
			}
			return;
		}
		StyledText widget = in.getTextWidget();
		if (widget == null || widget.isDisposed()) {
			return;
		}
		widget.getDisplay().asyncExec(() -> {
			if (!widget.isDisposed() && viewer != null && edited.isPresent() && edited.get().document() == of.document()
					&& stamp(of.document()) == stamp) {
				show(in, answer);
			}
		});
	}

	private static long stamp(IDocument document) {
		return document instanceof IDocumentExtension4 stamped ? stamped.getModificationStamp() : NO_STAMP;
	}

	@Override
	public void documentAboutToBeChanged(DocumentEvent event) {
		// what matters is what comes of it
	}

	@Override
	public void documentChanged(DocumentEvent event) {
		again();
	}

	@Override
	public void inputDocumentAboutToBeChanged(IDocument old, IDocument now) {
		end();
	}

	@Override
	public void inputDocumentChanged(IDocument old, IDocument now) {
		begin(now);
	}

	/** Returns the project of the text, if it is one of rules. */
	Optional<OpenProject> project() {
		return edited.map(EditedFile::project);
	}
}
