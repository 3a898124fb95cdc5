package org.baywright.model;

/**
 * Something wrong in the text of a rule file itself: syntax, an unknown name, a unit that does not fit.
 *
 * @param id stable id of the kind of problem, in lower case with hyphens
 * @param severity how much it matters
 * @param span where
 * @param message one plain sentence: what is wrong
 * @param advice one plain sentence: what to do, or the empty text
 */
public record Problem(String id, Severity severity, Span span, String message, String advice) {
}
