package org.baywright.model;

/**
 * Something in which vehicles of one family differ, such as the engine or the year of build.
 *
 * @param name name of the trait, unique in its family
 * @param word what the numbers count ("year"), or the empty text
 * @param domain its values
 * @param span where it is declared
 */
public record Trait(String name, String word, Domain domain, Span span) implements Named {

	@Override
	public String title() {
		return name;
	}
}
