package org.baywright.workbench.editor;

import java.util.Map;
import java.util.WeakHashMap;

import org.eclipse.core.commands.Command;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.commands.IExecutionListener;
import org.eclipse.core.commands.NotHandledException;
import org.eclipse.jface.text.IDocumentExtension4;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ContentAssistEvent;
import org.eclipse.jface.text.contentassist.ICompletionListener;
import org.eclipse.jface.text.contentassist.ICompletionListenerExtension;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.source.ContentAssistantFacade;
import org.eclipse.jface.text.source.ISourceViewerExtension4;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.texteditor.ITextEditorActionDefinitionIds;

/**
 * How the list of proposals of a viewer was opened, so that Enter makes a new line as long as the reader cannot have meant
 * the list: it opened by itself, and nothing of the proposal is written yet, or a whole word of it (whoever writes words
 * out does not look at the list), or it came to the screen only just now.
 * All methods belong to the screen's thread.
 */
final class AssistSession implements ICompletionListener, ICompletionListenerExtension {

	/** Nobody reads a list and answers it in less than this. */
	private static final long GLANCE_NANOS = 250_000_000;

	private static final Map<ITextViewer, AssistSession> SESSIONS = new WeakHashMap<>();

	private volatile boolean byItself;
	private long shownAt;
	private boolean open;
	private boolean passing;
	private boolean byEnter;
	private boolean chosen;

	/** Returns what is known of a viewer's list; to be called first before a list can open. */
	static synchronized AssistSession of(ITextViewer viewer) {
		return SESSIONS.computeIfAbsent(viewer, of -> {
			AssistSession made = new AssistSession();
			ContentAssistantFacade assistant = of instanceof ISourceViewerExtension4 extended ? extended.getContentAssistantFacade() : null;
			if (assistant != null) {
				assistant.addCompletionListener(made);
			}
			Display display = of.getTextWidget().getDisplay();
			Listener hand = event -> made.moved(event, of);
			display.addFilter(SWT.KeyDown, hand);
			display.addFilter(SWT.MouseDown, hand);
			Command asking = PlatformUI.getWorkbench().getService(ICommandService.class).getCommand(ITextEditorActionDefinitionIds.CONTENT_ASSIST_PROPOSALS);
			IExecutionListener asked = made.new Asked();
			asking.addExecutionListener(asked);
			of.getTextWidget().addDisposeListener(event -> {
				asking.removeExecutionListener(asked);
				display.removeFilter(SWT.KeyDown, hand);
				display.removeFilter(SWT.MouseDown, hand);
			});
			return made;
		});
	}

	@Override
	public void assistSessionStarted(ContentAssistEvent event) {
		byItself = event.isAutoActivated;
		open = true;
		shownAt = 0;
		chosen = false;
	}

	/** An arrow or the tabulator, which leads into the list, is a choice; letters that sift the list are none. A click never means a new line. */
	private void moved(Event event, ITextViewer viewer) {
		byEnter = event.type == SWT.KeyDown && (event.character == SWT.CR || event.character == SWT.LF);
		boolean arrow = event.keyCode == SWT.ARROW_UP || event.keyCode == SWT.ARROW_DOWN || event.keyCode == SWT.PAGE_UP
				|| event.keyCode == SWT.PAGE_DOWN || event.keyCode == SWT.TAB;
		chosen |= shownAt != 0 && event.type == SWT.KeyDown && arrow;
		if (open && byEnter && byItself && !chosen && !passing && event.widget == viewer.getTextWidget()
				&& event.stateMask == 0 && viewer.getDocument() instanceof IDocumentExtension4 document) {
			passing = true;
			try {
				pass(event, document);
			} finally {
				passing = false;
			}
		}
	}

	/**
	 * Hands Enter on, and once more if the list only closed by it: the platform's list swallows the key when it finds at
	 * that moment that none of its lines fits any more what was typed, or while its lines are still worked out.
	 */
	private void pass(Event event, IDocumentExtension4 document) {
		StyledText text = (StyledText) event.widget;
		long before = document.getModificationStamp();
		send(text, event.keyCode, event.character);
		if (document.getModificationStamp() == before) {
			if (open) {
				send(text, SWT.ESC, SWT.ESC);
			}
			send(text, event.keyCode, event.character);
		}
		event.type = SWT.None;
	}

	private static void send(StyledText text, int keyCode, char character) {
		Event key = new Event();
		key.keyCode = keyCode;
		key.character = character;
		key.doit = true;
		text.notifyListeners(SWT.KeyDown, key);
	}

	/** The platform tells so only of lists with several pages. */
	@Override
	public void assistSessionRestarted(ContentAssistEvent event) {
		byItself = false;
	}

	/** Asked for while it is open already: the list is meant. */
	private final class Asked implements IExecutionListener {

		@Override
		public void preExecute(String command, ExecutionEvent event) {
			byItself &= !open;
		}

		@Override
		public void postExecuteSuccess(String command, Object result) {
			// that it is asked for matters alone
		}

		@Override
		public void postExecuteFailure(String command, ExecutionException failure) {
			// that it is asked for matters alone
		}

		@Override
		public void notHandled(String command, NotHandledException failure) {
			// that it is asked for matters alone
		}
	}

	@Override
	public void assistSessionEnded(ContentAssistEvent event) {
		open = false;
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
		}
	}

	/** Returns whether a list opens because of what is typed, not because it was asked for. May be called on any thread. */
	static synchronized boolean opensByItself(ITextViewer viewer) {
		AssistSession known = SESSIONS.get(viewer);
		return known != null && known.byItself;
	}

	/** Returns whether Enter means a new line, not the proposal. */
	boolean meansNewLine(boolean nothingToAdd) {
		boolean unseen = shownAt == 0 || System.nanoTime() - shownAt < GLANCE_NANOS;
		return byItself && byEnter && !chosen && (nothingToAdd || unseen);
	}
}
