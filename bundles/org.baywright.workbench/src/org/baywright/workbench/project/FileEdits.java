package org.baywright.workbench.project;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Function;

import org.baywright.model.write.RuleWriter;
import org.baywright.workbench.Baywright;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.ITextFileBufferManager;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;

/** Changes rule files through the text that an editor has open, so that nothing typed is lost. */
public final class FileEdits {

	/** A change of a text. */
	public interface Change {
		/** Makes the change. */
		void make(IDocument document) throws BadLocationException;
	}

	private FileEdits() {
	}

	/**
	 * Adds a text at the end of a file, after an empty line; a file that is not there is made.
	 *
	 * @return where the text begins
	 * @throws CoreException if the file cannot be read or written
	 */
	public static int append(IFile file, String text) throws CoreException {
		return append(file, text, true);
	}

	/**
	 * Adds a text at the end of a file that an editor has open, after an empty line, and saves nothing, so that it can be undone.
	 *
	 * @return where the text begins
	 * @throws CoreException if the file cannot be read
	 */
	public static int type(IFile file, String text) throws CoreException {
		return append(file, text, false);
	}

	private static int append(IFile file, String text, boolean save) throws CoreException {
		file.refreshLocal(IResource.DEPTH_ZERO, null); // somebody else may have removed it
		if (!file.exists()) {
			if (file.getParent() instanceof IFolder folder && !folder.exists()) {
				folder.create(false, true, null);
			}
			file.create(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), false, null);
			return 0;
		}
		if (!RuleWriter.isWhole(text(file))) {
			throw new CoreException(Baywright.error(RuleWriter.notWhole(file.getName()), null));
		}
		int[] offset = new int[1];
		change(file, document -> {
			String present = document.get();
			String gap = RuleWriter.gap(present);
			document.replace(document.getLength(), 0, gap + text);
			offset[0] = present.length() + gap.length();
		}, save);
		return offset[0];
	}

	/**
	 * Changes a file. What an editor has open and unsaved stays unsaved; any other file is saved.
	 *
	 * @throws CoreException if the file cannot be read or written, or the change does not fit its text
	 */
	public static void change(IFile file, Change change) throws CoreException {
		change(file, change, true);
	}

	private static void change(IFile file, Change change, boolean save) throws CoreException {
		ITextFileBufferManager buffers = FileBuffers.getTextFileBufferManager();
		buffers.connect(file.getFullPath(), LocationKind.IFILE, null);
		try {
			ITextFileBuffer buffer = buffers.getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
			boolean unsaved = buffer.isDirty();
			change.make(buffer.getDocument());
			if (save && !unsaved) {
				buffer.commit(null, false);
			}
		} catch (BadLocationException e) {
			throw new CoreException(Baywright.error("The change does not fit the text of " + file.getName() + " any more.", e));
		} finally {
			buffers.disconnect(file.getFullPath(), LocationKind.IFILE, null);
		}
	}

	/** Returns the text of a file as an editor has it open, or else as it is on the disk; the empty text if there is none. */
	public static String text(IFile file) {
		return read(file, buffer -> buffer.getDocument().get(), "");
	}

	/** Returns whether an editor has changes of a file that are not saved. */
	public static boolean isUnsaved(IFile file) {
		return read(file, ITextFileBuffer::isDirty, false);
	}

	/** Returns whether the text of a file, as an editor has it open or else as it is on the disk, is this one. */
	public static boolean isText(IFile file, String text) {
		return read(file, buffer -> buffer.getDocument().get().equals(text), false);
	}

	private static <T> T read(IFile file, Function<ITextFileBuffer, T> what, T otherwise) {
		if (!file.exists()) {
			return otherwise;
		}
		ITextFileBufferManager buffers = FileBuffers.getTextFileBufferManager();
		try {
			buffers.connect(file.getFullPath(), LocationKind.IFILE, null);
			try {
				return what.apply(buffers.getTextFileBuffer(file.getFullPath(), LocationKind.IFILE));
			} finally {
				buffers.disconnect(file.getFullPath(), LocationKind.IFILE, null);
			}
		} catch (CoreException e) {
			Baywright.log("The text of " + file.getName() + " cannot be read.", e);
			return otherwise;
		}
	}
}
