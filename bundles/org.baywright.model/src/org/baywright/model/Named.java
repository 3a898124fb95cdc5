package org.baywright.model;

/** An element that the author named. */
public sealed interface Named
		permits Family, Trait, State, Tool, Hazard, Module, Code, Sign, Part, Fault, Test, Rule, Chain, Repair, Case {

	/** Returns the name by which rules refer to the element; for a fault {@code part.fault}. */
	String name();

	/** Returns what a technician calls it; the name itself if the author gave no title. */
	String title();

	/** Returns where the element's name stands. */
	Span span();
}
