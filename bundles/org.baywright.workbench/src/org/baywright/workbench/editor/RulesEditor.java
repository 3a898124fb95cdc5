package org.baywright.workbench.editor;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

import org.baywright.pack.WholeFile;
import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.IDocument;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.internal.genericeditor.ExtensionBasedTextEditor;
import org.eclipse.ui.texteditor.IDocumentProvider;
import org.eclipse.ui.texteditor.IDocumentProviderExtension;
import org.eclipse.ui.texteditor.IDocumentProviderExtension3;

/**
 * The platform's editor, but that what is typed never goes without the author's word: neither when another program changes
 * the file nor when it, or its whole project, is taken away.
 */
public final class RulesEditor extends ExtensionBasedTextEditor {

	private boolean asking;
	private boolean writingOver;
	/** Whether the author has said what becomes of the text of a file that is gone. */
	private boolean decided;

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
		boolean replace = !isDirty() || ask(EditorMessages.ChangedTitle, EditorMessages.ChangedText, EditorMessages.ChangedKeep,
				EditorMessages.ChangedReplace) == 1;
		if (replace && provider.isDeleted(getEditorInput())) {
			// it went while the question was open
			gone();
		} else if (replace && provider instanceof IDocumentProviderExtension extension) {
			try {
				extension.synchronize(getEditorInput());
			} catch (CoreException e) {
				ErrorDialog.openError(getSite().getShell(), EditorMessages.ChangedTitle, EditorMessages.ChangedFailed, e.getStatus());
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
		int answer = ask(EditorMessages.GoneTitle, EditorMessages.GoneText, EditorMessages.GoneKeep, EditorMessages.GoneSave,
				EditorMessages.GoneClose);
		if (answer == 1) {
			saveElsewhere();
		} else if (answer == 2) {
			super.close(false);
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
				ErrorDialog.openError(getSite().getShell(), EditorMessages.FullTitle, NLS.bind(EditorMessages.FullText, getEditorInput().getName()),
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
		} else if (ask(EditorMessages.ConflictTitle, EditorMessages.ConflictText, EditorMessages.ConflictLeave, EditorMessages.ConflictWrite) == 1) {
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
			ErrorDialog.openError(getSite().getShell(), EditorMessages.GoneTitle, NLS.bind(EditorMessages.GoneFailed, chosen.get()),
					Baywright.error(e.getMessage(), e));
		}
	}

	private Optional<Path> chooseFile() {
		FileDialog dialog = new FileDialog(getSite().getShell(), SWT.SAVE);
		dialog.setText(EditorMessages.GoneTitle);
		dialog.setFileName(getEditorInput().getName());
		dialog.setFilterExtensions(new String[] { "*." + Baywright.ENDING });
		dialog.setOverwrite(true);
		return Optional.ofNullable(dialog.open()).map(Path::of);
	}
}
