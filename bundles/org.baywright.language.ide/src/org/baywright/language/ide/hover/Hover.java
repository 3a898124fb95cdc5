package org.baywright.language.ide.hover;

/**
 * What stands at a place, in words.
 *
 * @param offset where the word begins that is explained
 * @param length how long it is
 * @param markdown the explanation, in Markdown
 */
public record Hover(int offset, int length, String markdown) {
}
