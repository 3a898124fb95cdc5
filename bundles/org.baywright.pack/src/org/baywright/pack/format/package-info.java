/**
 * The rule base as JSON and back. What is written is complete: reading it and writing it again gives the same bytes.
 *
 * <p>Decimal numbers are texts such as {@code "12.4"}, so that no reader rounds them; line numbers and counts are JSON
 * numbers. Of a place only the file and the line are kept. What can be derived from the rest ({@code allTraits},
 * {@code reaches}, {@code resolved}, {@code meaning}, {@code stale}, {@code display}) is written for the readers' ease
 * and passed over when a rule base is read.
 */
package org.baywright.pack.format;
