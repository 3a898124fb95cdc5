package org.baywright.planner;

import java.util.List;

/**
 * How well checks tell faults from a sound vehicle, and from each other, with the shares of faults that IEEE 1522 names
 * (definitions from memory): each fault counts as likely as it is.
 *
 * @param detection which share of the faults shows in some check, from 0 to 1
 * @param isolation which share of these shows as no other fault does, from 0 to 1; 1 if none shows
 * @param groups the faults that no check tells from each other, in their order; those that do not show are in none
 */
public record Testability(double detection, double isolation, List<List<Integer>> groups) {

	public Testability {
		groups = groups.stream().map(List::copyOf).toList();
	}
}
