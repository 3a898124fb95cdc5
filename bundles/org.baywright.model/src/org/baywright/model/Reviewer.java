package org.baywright.model;

import java.util.List;

/**
 * A person who reviews rules.
 *
 * @param name who, as it stands in reviews
 * @param qualifications what the person is qualified for, in the project's own words
 * @param span where it is written
 */
public record Reviewer(String name, List<String> qualifications, Span span) {

	public Reviewer {
		qualifications = List.copyOf(qualifications);
	}
}
