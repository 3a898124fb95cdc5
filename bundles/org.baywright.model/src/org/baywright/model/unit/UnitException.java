package org.baywright.model.unit;

/** A unit is unknown, or two units do not measure the same kind of thing. The message is a plain sentence. */
public final class UnitException extends Exception {

	private static final long serialVersionUID = 1L;

	UnitException(String message) {
		super(message);
	}
}
