package org.baywright.model;

import java.util.List;
import java.util.Optional;

/**
 * The vehicles a rule speaks of.
 *
 * @param families families it is written for, and all families built on them; empty for every family
 * @param except families left out, with all built on them
 * @param where condition on traits
 * @param span where it is written
 */
public record Scope(List<String> families, List<String> except, Optional<Condition> where, Span span) {

	/** Every vehicle. */
	public static final Scope EVERY = new Scope(List.of(), List.of(), Optional.empty(), Span.NONE);

	/** Returns whether no vehicle is left out. */
	public boolean isEvery() {
		return families.isEmpty() && except.isEmpty() && where.isEmpty();
	}

	public Scope {
		families = List.copyOf(families);
		except = List.copyOf(except);
	}
}
