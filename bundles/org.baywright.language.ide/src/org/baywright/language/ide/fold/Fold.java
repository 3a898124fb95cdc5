package org.baywright.language.ide.fold;

/**
 * Lines that can be folded away; the first of them stays.
 *
 * @param offset where it begins
 * @param length how long it is; it ends before the line end of its last line
 * @param comment whether it is a comment
 */
public record Fold(int offset, int length, boolean comment) {
}
