package org.baywright.language.workspace;

/** Follows the reading of a project. All methods are called on the thread that reads. */
public interface LoadListener {

	/** Ignores everything. */
	LoadListener NONE = new LoadListener() {
	};

	/**
	 * A file has been read.
	 *
	 * @param file its path relative to the project
	 * @param done how many files have been read
	 * @param total how many there are
	 */
	default void fileRead(String file, int done, int total) {
	}

	/** Asked between files; if it returns true, reading ends with a {@code CancellationException}. */
	default boolean isCancelled() {
		return false;
	}
}
