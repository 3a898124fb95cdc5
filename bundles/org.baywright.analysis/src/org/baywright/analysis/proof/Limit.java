package org.baywright.analysis.proof;

import org.baywright.model.Law;

/**
 * What laws of another part of the family say about traits.
 *
 * @param law the vehicles that it shuts out
 * @param line the laws that shut them out
 */
public record Limit(Law law, SourceLine line) {
}
