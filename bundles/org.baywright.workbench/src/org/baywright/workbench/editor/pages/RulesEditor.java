package org.baywright.workbench.editor.pages;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.baywright.pack.WholeFile;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.editor.card.CardActions;
import org.baywright.workbench.editor.card.CardPage;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.ISaveablePart2;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.contexts.IContextService;
import org.eclipse.ui.internal.genericeditor.ExtensionBasedTextEditor;
import org.eclipse.ui.texteditor.IDocumentProvider;
import org.eclipse.ui.texteditor.IDocumentProviderExtension;
import org.eclipse.ui.texteditor.IDocumentProviderExtension3;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;

/**
 * The platform's editor, but that what is typed never goes without the author's word: neither when another program changes
 * the file nor when it, or its whole project, is taken away.
 */
public final class RulesEditor extends ExtensionBasedTextEditor implements ISaveablePart2 {

	private static final String[] WINDOW = { IContextService.CONTEXT_ID_WINDOW };

	private CTabFolder pages;
	private String[] scopes;
	private CTabItem textTab;
	private CardPage card;
	private boolean asking;
	private boolean writingOver;
	/** Whether the author has said what becomes of the text of a file that is gone. */
	private boolean decided;

	// ---- the two pages ---------------------------------------------------------------------------------------------

	@Override
	public void createPartControl(Composite parent) {
		pages = new CTabFolder(parent, SWT.BOTTOM | SWT.FLAT);
		Composite text = new Composite(pages, SWT.NONE);
		text.setLayout(new FillLayout());
		super.createPartControl(text);
		scopes = getEditorSite().getKeyBindingService().getScopes();
		textTab = tab(PageMessages.TextPage, text);
		card = new CardPage(pages, this, () -> turn(false), () -> firePropertyChange(IEditorPart.PROP_DIRTY));
		tab(PageMessages.CardPage, card.control());
		pages.setSelection(textTab);
		pages.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> turned()));
	}

	private CTabItem tab(String title, Control page) {
		CTabItem tab = new CTabItem(pages, SWT.NONE);
		tab.setText(title);
		tab.setControl(page);
		return tab;
	}

	private void turned() {
		// the keys of a text, such as Home, would act on the text that is out of sight
		getEditorSite().getKeyBindingService().setScopes(isCardInFront() ? WINDOW : scopes);
		if (isCardInFront()) {
			card.open();
			card.setFocus();
		} else {
			card.flush();
			card.place().filter(place -> !place.includes(getSelectionProvider().getSelection() instanceof ITextSelection now ? now.getOffset() : -1))
					.ifPresent(place -> selectAndReveal(place.getOffset(), 0));
			super.setFocus();
		}
	}

	/** Returns whether the card is seen and not the text. */
	public boolean isCardInFront() {
		return pages != null && !pages.isDisposed() && pages.getSelection() != null && pages.getSelection() != textTab;
	}

	/** Brings one of the two pages to the front. */
	public void turn(boolean toCard) {
		if (toCard != isCardInFront()) {
			pages.setSelection(toCard ? 1 : 0);
			turned();
		}
	}

	@Override
	public void setFocus() {
		if (isCardInFront()) {
			card.setFocus();
		} else {
			super.setFocus();
		}
	}

	/** Whoever leads to a place leads to the page that is open. */
	@Override
	protected void selectAndReveal(int start, int length, int revealStart, int revealLength) {
		super.selectAndReveal(start, length, revealStart, revealLength);
		if (isCardInFront()) {
			card.go(start);
		}
	}

	@Override
	public void setAction(String id, IAction action) {
		super.setAction(id, CardActions.of(id, action, this::isCardInFront));
	}

	/** What is typed into a field and not in the text yet is taken back before anything of the text is. */
	@Override
	protected void createUndoRedoActions() {
		super.createUndoRedoActions();
		IAction undo = CardActions.undo(getAction(ITextEditorActionConstants.UNDO), () -> isCardInFront() && card.takeBack());
		setAction(ITextEditorActionConstants.UNDO, undo);
		getEditorSite().getActionBars().setGlobalActionHandler(ITextEditorActionConstants.UNDO, undo);
	}

	/** What was typed on a card and does not fit is told, and nobody who saves before closing loses it. */
	@Override
	public void doSave(IProgressMonitor monitor) {
		settle();
		super.doSave(monitor);
		List<String> refused = card == null ? List.of() : card.refused();
		boolean stays = !refused.isEmpty() || PlatformUI.getWorkbench().isClosing() && !isLossMeant();
		if (stays && monitor != null) {
			monitor.setCanceled(true);
		}
		if (!refused.isEmpty()) {
			MessageDialog.openInformation(getSite().getShell(), PageMessages.RefusedTitle,
					PageMessages.bind(PageMessages.Refused, String.join("\n", refused)));
		}
	}

	@Override
	public void doSaveAs() {
		settle();
		super.doSaveAs();
	}

	/** What is typed into a field and waits for a pause is not saved either, nor is what does not fit or is not whole. */
	@Override
	public boolean isDirty() {
		return isTextDirty() || card != null && !card.begun().isEmpty();
	}

	/** Returns whether there is something to save, or that cannot be. */
	private boolean isTextDirty() {
		return super.isDirty() || card != null && (card.isTyping() || !card.refused().isEmpty());
	}

	/** What is begun on cards and not whole is in no text that could be saved. */
	@Override
	public int promptToSaveOnClose() {
		settle();
		if (!isLossMeant()) {
			return CANCEL;
		}
		return isTextDirty() ? DEFAULT : NO;
	}

	/** Asks whether what is begun on cards may be lost, if there is any. */
	private boolean isLossMeant() {
		List<String> begun = card == null ? List.of() : card.begun();
		return begun.isEmpty() || MessageDialog.open(MessageDialog.QUESTION, getSite().getShell(), PageMessages.RefusedTitle,
				PageMessages.bind(PageMessages.Begun, String.join("\n", begun)), SWT.NONE, PageMessages.BegunKeep, PageMessages.BegunClose) == 1;
	}

	private void settle() {
		if (card != null) {
			card.settle();
		}
	}

	// ---- files that change or go -------------------------------------------------------------------------------------

	@Override
	protected void handleEditorInputChanged() {
		IDocumentProvider provider = getDocumentProvider();
		if (provider == null || asking) {
			return;
		}
		asking = true;
		try {
			if (provider.isDeleted(getEditorInput())) {
				gone();
			} else {
				changed(provider);
			}
		} finally {
			asking = false;
		}
	}

	private void changed(IDocumentProvider provider) {
		boolean replace = !isTextDirty() || ask(PageMessages.ChangedTitle, PageMessages.ChangedText, PageMessages.ChangedKeep,
				PageMessages.ChangedReplace) == 1;
		if (replace && provider.isDeleted(getEditorInput())) {
			// it went while the question was open
			gone();
		} else if (replace && provider instanceof IDocumentProviderExtension extension) {
			try {
				extension.synchronize(getEditorInput());
			} catch (CoreException e) {
				ErrorDialog.openError(getSite().getShell(), PageMessages.ChangedTitle, PageMessages.ChangedFailed, e.getStatus());
			}
		}
	}

	/** The platform closes the editor of a file that is gone. */
	@Override
	public void close(boolean save) {
		if (save || decided || !isDirty() || !isGone()) {
			super.close(save);
			return;
		}
		getSite().getShell().getDisplay().asyncExec(() -> {
			if (getSourceViewer() != null && !asking && isDirty() && isGone()) {
				handleEditorInputChanged();
			}
		});
	}

	/** The platform shows in the editor's stead that there is no file; what was typed would be out of sight. */
	@Override
	public void updatePartControl(IEditorInput input) {
		if (!isDirty() || !isGone()) {
			super.updatePartControl(input);
		}
	}

	private boolean isGone() {
		return getDocumentProvider() != null && getDocumentProvider().isDeleted(getEditorInput());
	}

	private void gone() {
		if (!isDirty()) {
			decided = true;
			super.close(false);
			return;
		}
		if (decided) {
			return;
		}
		decided = true;
		holdText();
		int answer = ask(PageMessages.GoneTitle, PageMessages.GoneText, PageMessages.GoneKeep, PageMessages.GoneSave,
				PageMessages.GoneClose);
		if (answer == 1) {
			saveElsewhere();
		} else if (answer == 2) {
			super.close(false);
		}
	}

	/** The platform lets go of the text of a file that is gone unless something of it is to be saved. */
	private void holdText() {
		IDocument document = getDocumentProvider().getDocument(getEditorInput());
		if (document != null && !super.isDirty()) {
			try {
				document.replace(document.getLength(), 0, "\n");
				document.replace(document.getLength() - 1, 1, "");
			} catch (BadLocationException e) {
				Baywright.log("The text of a file that is gone cannot be held.", e);
			}
		}
	}

	private int ask(String title, String text, String... buttons) {
		// the first does no harm; closing the dialog means it too
		return MessageDialog.open(MessageDialog.QUESTION, getSite().getShell(), title, NLS.bind(text, getEditorInput().getName()), SWT.NONE,
				buttons);
	}

	/**
	 * The platform writes over the file itself, so a disk that is full would leave half of it. Whether there is room is tried
	 * beside it first.
	 */
	@Override
	protected void performSave(boolean overwrite, IProgressMonitor monitor) {
		IFile file = Adapters.adapt(getEditorInput(), IFile.class);
		IDocument document = getDocumentProvider().getDocument(getEditorInput());
		Path folder = file == null || file.getLocation() == null ? null : file.getLocation().toPath().getParent();
		if (folder != null && document != null && Files.isDirectory(folder)) {
			try {
				WholeFile.requireRoom(folder, document.get().getBytes(StandardCharsets.UTF_8));
			} catch (IOException e) {
				if (monitor != null) {
					monitor.setCanceled(true);
				}
				ErrorDialog.openError(getSite().getShell(), PageMessages.FullTitle, NLS.bind(PageMessages.FullText, getEditorInput().getName()),
						Baywright.error(e.getMessage(), e));
				return;
			}
		}
		super.performSave(overwrite, monitor);
	}

	/** The platform's own question would write over what others saved if one only pressed Enter. */
	@Override
	protected void handleExceptionOnSave(CoreException exception, IProgressMonitor monitor) {
		boolean overtaken = getDocumentProvider() instanceof IDocumentProviderExtension3 provider && !provider.isSynchronized(getEditorInput());
		if (!overtaken || isGone() || writingOver) {
			super.handleExceptionOnSave(exception, monitor);
		} else if (ask(PageMessages.ConflictTitle, PageMessages.ConflictText, PageMessages.ConflictLeave, PageMessages.ConflictWrite) == 1) {
			writingOver = true;
			try {
				performSave(true, monitor);
			} finally {
				writingOver = false;
			}
		} else if (monitor != null) {
			monitor.setCanceled(true);
		}
	}

	/** The platform would save into the workspace, and would make anew a project of which nothing else is left. */
	private void saveElsewhere() {
		Optional<Path> chosen = chooseFile();
		if (chosen.isEmpty()) {
			return;
		}
		IDocument document = getDocumentProvider().getDocument(getEditorInput());
		try {
			WholeFile.writeRules(chosen.get(), document.get().getBytes(StandardCharsets.UTF_8));
			super.close(false);
		} catch (IOException e) {
			ErrorDialog.openError(getSite().getShell(), PageMessages.GoneTitle, NLS.bind(PageMessages.GoneFailed, chosen.get()),
					Baywright.error(e.getMessage(), e));
		}
	}

	private Optional<Path> chooseFile() {
		FileDialog dialog = new FileDialog(getSite().getShell(), SWT.SAVE);
		dialog.setText(PageMessages.GoneTitle);
		dialog.setFileName(getEditorInput().getName());
		dialog.setFilterExtensions(new String[] { "*." + Baywright.ENDING });
		dialog.setOverwrite(true);
		return Optional.ofNullable(dialog.open()).map(Path::of);
	}
}
