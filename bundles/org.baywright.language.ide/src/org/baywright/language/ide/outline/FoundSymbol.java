package org.baywright.language.ide.outline;

import org.baywright.language.index.Kind;

/**
 * A named thing of a project.
 *
 * @param name its name
 * @param title what a technician calls it, or the empty text
 * @param kind what it is
 * @param file where it is declared
 * @param offset where its name stands
 * @param length how long its name is
 */
public record FoundSymbol(String name, String title, Kind kind, String file, int offset, int length) {
}
