package org.baywright.workbench.editor;

import java.util.Map;
import java.util.WeakHashMap;

import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ContentAssistEvent;
import org.eclipse.jface.text.contentassist.ICompletionListener;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.source.ContentAssistantFacade;
import org.eclipse.jface.text.source.ISourceViewerExtension4;

/**
 * How the list of proposals of a viewer was opened, so that Enter makes a new line as long as the reader cannot have meant
 * the list: it opened by itself, and nothing of the proposal is written yet, or a whole word of it (whoever writes words
 * out does not look at the list), or it came to the screen only just now.
 * All methods belong to the screen's thread.
 */
final class AssistSession implements ICompletionListener {

	/** Nobody reads a list and answers it in less than this. */
	private static final long GLANCE_NANOS = 250_000_000;

	private static final Map<ITextViewer, AssistSession> SESSIONS = new WeakHashMap<>();

	private boolean byItself;
	private long shownAt;
	private int moves;

	/** Returns what is known of a viewer's list. */
	static AssistSession of(ITextViewer viewer) {
		return SESSIONS.computeIfAbsent(viewer, of -> {
			AssistSession made = new AssistSession();
			ContentAssistantFacade assistant = of instanceof ISourceViewerExtension4 extended ? extended.getContentAssistantFacade() : null;
			if (assistant != null) {
				assistant.addCompletionListener(made);
			}
			return made;
		});
	}

	@Override
	public void assistSessionStarted(ContentAssistEvent event) {
		byItself = event.isAutoActivated;
		shownAt = 0;
		moves = 0;
	}

	@Override
	public void assistSessionEnded(ContentAssistEvent event) {
		shownAt = 0;
	}

	@Override
	public void selectionChanged(ICompletionProposal proposal, boolean smartToggle) {
		// told by the proposals, which hear of it in each kind of list
	}

	/** A proposal is the chosen one of the list that is on the screen. */
	void shown() {
		if (shownAt == 0) {
			shownAt = System.nanoTime();
		} else {
			moves++;
		}
	}

	/** Returns whether Enter means a new line, not the proposal. */
	boolean meansNewLine(boolean nothingToAdd) {
		boolean unseen = shownAt == 0 || System.nanoTime() - shownAt < GLANCE_NANOS;
		return byItself && moves == 0 && (nothingToAdd || unseen);
	}
}
