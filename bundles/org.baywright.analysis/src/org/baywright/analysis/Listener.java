package org.baywright.analysis;

/** Hears how an analysis goes on, and can stop it. Methods may be called from several threads. */
public interface Listener {

	/** Hears nothing and never stops. */
	Listener NONE = new Listener() {
	};

	/**
	 * Some work is done.
	 *
	 * @param done parts of the rule base proved so far
	 * @param total parts to prove
	 */
	default void progress(int done, int total) {
	}

	/** Returns whether the analysis shall stop. */
	default boolean isCancelled() {
		return false;
	}
}
