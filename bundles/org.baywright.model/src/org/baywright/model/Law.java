package org.baywright.model;

import java.util.List;

/**
 * What physics or wiring makes certain: whenever {@code when} holds of the vehicle, {@code then} holds too, whether
 * anybody has looked or not. Laws speak of traits and findings, never of verdicts. One that names a module, or a code of
 * it, does not bind a family that lacks the module.
 *
 * @param title the law in words
 * @param families families it holds for; empty for all
 * @param when premise
 * @param then consequence
 * @param span where the law is written
 */
public record Law(String title, List<String> families, Condition when, Condition then, Span span) {

	public Law {
		families = List.copyOf(families);
	}
}
