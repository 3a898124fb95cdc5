package org.baywright.sharing;

/** Something about a shared project does not work; the message says what is wrong and what to do. Nothing is half done then. */
public final class SharingException extends Exception {

	private static final long serialVersionUID = 1L;

	/** @param message what is wrong and what to do, in plain words */
	public SharingException(String message) {
		super(message);
	}

	/**
	 * @param message what is wrong and what to do, in plain words
	 * @param cause what told it
	 */
	public SharingException(String message, Throwable cause) {
		super(message, cause);
	}
}
