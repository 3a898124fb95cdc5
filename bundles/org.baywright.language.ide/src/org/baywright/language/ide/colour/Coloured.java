package org.baywright.language.ide.colour;

/**
 * A word with its colour.
 *
 * @param offset where it begins
 * @param length how long it is
 * @param colour what it is
 * @param declaration whether a name is declared here
 */
public record Coloured(int offset, int length, Colour colour, boolean declaration) {
}
