package org.baywright.sharing;

import java.util.List;

import org.baywright.language.merge.Change;

/**
 * What came into the shared state.
 *
 * @param steps who brought what, the newest first
 * @param changes what that comes to, all together
 */
public record News(List<Written> steps, List<Change> changes) {
}
