package org.baywright.presenter.grid;

import org.baywright.model.Span;

/**
 * A fault.
 *
 * @param fault its name
 * @param title its part and what a technician says
 * @param seen finished jobs in which it was the cause
 * @param group number of its group in {@link Grid#groups()}; -1 if some tests tell it from all others, or nobody has
 *            checked
 * @param used whether a rule that is shown says anything of it
 * @param span where it is declared
 */
public record Column(String fault, String title, int seen, int group, boolean used, Span span) {
}
