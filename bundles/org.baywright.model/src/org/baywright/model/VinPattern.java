package org.baywright.model;

/**
 * The beginning of the vehicle identification numbers (ISO 3779) of a family.
 *
 * @param pattern prefix; {@code ?} stands for any permitted character
 * @param checkDigit whether the family's market requires the check digit of 49 CFR 565 in position 9
 * @param span where it is written
 */
public record VinPattern(String pattern, boolean checkDigit, Span span) {
}
