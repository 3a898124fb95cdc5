package org.baywright.sharing;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ConnectException;
import java.net.UnknownHostException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

import org.eclipse.jgit.errors.LockFailedException;
import org.eclipse.jgit.errors.MissingObjectException;
import org.eclipse.jgit.errors.NoRemoteRepositoryException;
import org.eclipse.jgit.errors.NotSupportedException;
import org.eclipse.jgit.errors.RepositoryNotFoundException;

/** Puts what went wrong beneath into a sentence that says what to do. */
final class Failures {

	private Failures() {
	}

	/**
	 * @param e what went wrong
	 * @param where the folder or the place that it happened with
	 */
	static SharingException of(Exception e, String where) {
		for (Throwable cause = e; cause != null; cause = cause.getCause()) {
			if (cause instanceof SharingException told) {
				return told;
			}
			String said = known(cause, where);
			if (said != null) {
				return new SharingException(said, e);
			}
		}
		return new SharingException(where + " cannot be used: " + firstLine(e) + ". Nothing was changed; correct it and try again.", e);
	}

	private static String known(Throwable cause, String where) {
		String message = String.valueOf(cause.getMessage()).toLowerCase(Locale.ROOT);
		if (cause instanceof LockFailedException locked) {
			return "Somebody else is writing to " + where + " just now. Try again in a moment; if nobody is, a program was stopped in the middle, and the file "
					+ locked.getFile() + ".lock can be deleted.";
		} else if (message.contains("no space left") || message.contains("disk full") || message.contains("not enough space") || message.contains("quota")) {
			return "The disk is full: " + where + " cannot be written. Make room and try again.";
		} else if (cause instanceof AccessDeniedException || message.contains("permission denied") || message.contains("access denied")
				|| message.contains("read-only file system")) {
			return "You may not read or write all of " + where + ". Ask whoever looks after it to let you.";
		} else if (message.contains("auth fail") || message.contains("not authorized") || message.contains("authentication is required")
				|| message.contains("no credentialsprovider")) {
			return where + " wants to know who you are. Ask whoever looks after it for access without a question, such as a key.";
		} else if (cause instanceof NoRemoteRepositoryException || cause instanceof RepositoryNotFoundException) {
			return "Nothing is shared at " + where + ", or it cannot be reached. See that the drive or the network is there and that the name is right.";
		} else if (cause instanceof NotSupportedException) {
			return where + " is no place that can be reached. Name a folder, or an address that begins with https:// or file://.";
		} else if (message.contains("unknownhost") || cause instanceof UnknownHostException || cause instanceof ConnectException
				|| message.contains("cannot open") || message.contains("hung up")) {
			return where + " cannot be reached. See that the network is there and that the name is right.";
		} else if (cause instanceof MissingObjectException) {
			return where + " has lost a part of what it kept. Join the shared place in a new folder, and copy your rule files there.";
		} else if (cause instanceof NoSuchFileException || cause instanceof FileNotFoundException) {
			return "A file is missing or may not be written: " + firstLine(cause) + ". See that " + where + " is whole and that you may write there.";
		} else if (cause instanceof FileSystemException file && file.getFile() != null) {
			return "The file " + file.getFile() + " cannot be read or written" + (file.getReason() == null ? "" : ": " + file.getReason()) + ". Correct that and try again.";
		}
		return null;
	}

	private static String firstLine(Throwable e) {
		String text = String.valueOf(e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage());
		return text.lines().findFirst().orElse("").replaceFirst("\\.$", "");
	}

	/** A piece of work beneath. */
	interface Work<T> {
		T run() throws IOException, SharingException;
	}

	/** Does a piece of work, and puts what goes wrong into words. */
	static <T> T told(String where, Work<T> work) throws SharingException {
		try {
			return work.run();
		} catch (IOException e) {
			throw of(e, where);
		} catch (UncheckedIOException e) {
			throw of(e, where);
		}
	}
}
