package org.baywright.workbench.project;

import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;

/** Knows which files somebody is editing: their text on disk is not the one that counts. */
final class EditedTexts {

	private EditedTexts() {
	}

	/** Returns whether an editor has a file open with a text that differs from the one on disk. */
	static boolean isEdited(IFile file) {
		ITextFileBuffer buffer = FileBuffers.getTextFileBufferManager().getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
		return buffer != null && buffer.isDirty();
	}
}
