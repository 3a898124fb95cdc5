package org.baywright.sharing;

import java.time.Instant;

/**
 * What somebody offers to all.
 *
 * @param id names it, the same for everybody: who and what, as {@code ann/lower-limit}
 * @param author who offers it
 * @param date when it was offered last
 * @param title what it is, in a few words
 * @param note what else the author says; may be empty
 * @param revision its state, for {@link SharedProject#texts(String)}
 * @param base the shared state that it came of
 * @param newest whether nothing came into the shared state since
 * @param standing what became of it
 */
public record Offer(String id, String author, Instant date, String title, String note, String revision, String base, boolean newest, Standing standing) {

	/** What became of an offer. */
	public enum Standing {
		/** It waits for others. */
		OPEN,
		/** It is part of the shared state. */
		TAKEN_OVER,
		/** Its author has taken it back. */
		WITHDRAWN
	}
}
