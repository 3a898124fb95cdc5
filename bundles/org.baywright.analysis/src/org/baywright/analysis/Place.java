package org.baywright.analysis;

import org.baywright.model.Span;

/**
 * A place that a flaw points to.
 *
 * @param span where
 * @param note what stands there, in a few words
 */
public record Place(Span span, String note) {
}
