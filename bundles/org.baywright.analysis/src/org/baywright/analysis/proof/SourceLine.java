package org.baywright.analysis.proof;

/**
 * A line of the source, told so that moving the whole element in its file does not change it.
 *
 * @param kind "rule" or "law"
 * @param element name of the rule, title of the law
 * @param offset lines below the line of the element's name; may be negative
 */
public record SourceLine(String kind, String element, int offset) {
}
