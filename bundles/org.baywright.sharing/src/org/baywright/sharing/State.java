package org.baywright.sharing;

import java.util.List;
import java.util.Optional;

import org.baywright.language.merge.Change;

/**
 * How a copy stands to the shared state, as far as that was asked for last.
 *
 * @param mine what is in the copy and not in the shared state that it is at
 * @param offeredAs the open offer that says just that, if there is one
 * @param news how many commits the shared state is ahead of the copy
 */
public record State(List<Change> mine, Optional<String> offeredAs, int news) {

	/** Returns whether there is something to offer that is not offered yet. */
	public boolean isAnythingToOffer() {
		return !mine.isEmpty() && offeredAs.isEmpty();
	}

	/** Returns whether the shared state has something that the copy lacks. */
	public boolean isAnythingNew() {
		return news > 0;
	}
}
