package org.baywright.model;

/**
 * Where knowledge comes from.
 *
 * @param kind the kind of source
 * @param text the published work, with its edition; otherwise the empty text
 */
public record Source(Kind kind, String text) {

	/** Kinds of source, best first. */
	public enum Kind {
		/** A published work that can be looked up. */
		PUBLISHED,
		/** Finished jobs of this project. */
		JOBS,
		/** Common practice of the trade. */
		PRACTICE,
		/** From memory; to be confirmed. */
		MEMORY,
		/** The author gave none. */
		NONE
	}
}
