package org.baywright.model;

/**
 * What comes first as long as a sign is there, before anything is tested.
 *
 * @param kind what it is
 * @param text why, or how the vehicle is made safe; may be empty but for {@link Kind#MAKE_SAFE}
 */
public record Precaution(Kind kind, String text) {

	/** What comes first. */
	public enum Kind {
		/** The vehicle must not be driven. */
		DO_NOT_DRIVE,
		/** The vehicle must not be started. */
		DO_NOT_START,
		/** Something must be done before anybody goes on. */
		MAKE_SAFE
	}
}
