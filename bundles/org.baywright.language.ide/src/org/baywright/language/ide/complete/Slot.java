package org.baywright.language.ide.complete;

/**
 * A place in an inserted text that the author fills in next.
 *
 * @param offset characters of the inserted text before it
 * @param length characters of its suggestion
 * @param group slots of one group are filled in together; groups are visited in their order, from 1
 */
public record Slot(int offset, int length, int group) {
}
