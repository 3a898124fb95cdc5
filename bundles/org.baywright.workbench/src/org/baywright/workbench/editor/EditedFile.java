package org.baywright.workbench.editor;

import java.util.Optional;

import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.RuleProjects;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.texteditor.ITextEditor;

/**
 * A rule file that an editor shows.
 *
 * @param project its project
 * @param file the file
 * @param document its text as the editor has it
 */
public record EditedFile(OpenProject project, IFile file, IDocument document) {

	/** Finds the file of a document; nothing if the document is not that of a rule file in the workspace. */
	public static Optional<EditedFile> of(IDocument document) {
		ITextFileBuffer buffer = document == null ? null : FileBuffers.getTextFileBufferManager().getTextFileBuffer(document);
		IPath location = buffer == null ? null : buffer.getLocation();
		if (location == null || location.segmentCount() < 2) {
			return Optional.empty();
		}
		IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(location);
		return file.exists() ? RuleProjects.of(file).map(project -> new EditedFile(project, file, document)) : Optional.empty();
	}

	/** Finds the file of an editor. */
	public static Optional<EditedFile> of(IEditorPart editor) {
		ITextEditor text = editor == null ? null : Adapters.adapt(editor, ITextEditor.class);
		if (text == null || text.getDocumentProvider() == null) {
			return Optional.empty();
		}
		return of(text.getDocumentProvider().getDocument(text.getEditorInput()));
	}

	/** Returns its path as services know it. */
	public String path() {
		return file.getProjectRelativePath().toPortableString();
	}

	/** Asks the language about the present text; not to be called on the screen's thread. */
	public <T> T ask(OpenProject.Question<T> question) {
		return project.ask(file, document.get(), question);
	}
}
