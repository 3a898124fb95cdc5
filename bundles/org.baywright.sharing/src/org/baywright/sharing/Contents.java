package org.baywright.sharing;

import java.util.SortedMap;

/**
 * The files of a project in one of its states.
 *
 * @param texts the rule files by path, with forward slashes
 * @param others all other files, such as pictures, and rule files that are no text in UTF-8
 */
public record Contents(SortedMap<String, String> texts, SortedMap<String, byte[]> others) {
}
