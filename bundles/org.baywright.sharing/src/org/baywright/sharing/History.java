package org.baywright.sharing;

import java.util.List;

/**
 * Who has worked on an element.
 *
 * @param kind the word of the element, such as {@code rule}
 * @param name its name, or what tells it apart
 * @param file where it stands
 * @param first who wrote it first
 * @param last who changed its text last
 * @param reviews who has said what about it, as the project says: what stands behind {@code review} and the name
 */
public record History(String kind, String name, String file, Written first, Written last, List<String> reviews) {
}
