package org.baywright.sharing;

/** Hears how far a step is, and may stop it. */
public interface SharingListener {

	/** Hears nothing and stops nothing. */
	SharingListener NONE = new SharingListener() {
	};

	/** Tells what is being done now, in a few words. */
	default void doing(String what) {
		// not everybody shows it
	}

	/** Returns whether the step shall stop; what is not done yet is left undone then, as a whole. */
	default boolean isCancelled() {
		return false;
	}
}
