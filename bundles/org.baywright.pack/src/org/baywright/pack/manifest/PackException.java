package org.baywright.pack.manifest;

/** A pack that cannot be read or written. The message says in plain words what is wrong and where. */
public class PackException extends Exception {

	private static final long serialVersionUID = 1L;

	/** @param message a plain sentence for the person who wanted the pack */
	public PackException(String message) {
		super(message);
	}

	/** @param message a plain sentence for the person who wanted the pack */
	public PackException(String message, Throwable cause) {
		super(message, cause);
	}
}
