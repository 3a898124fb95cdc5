package org.baywright.cli;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Finds what uses each other in a circle. */
final class Circles {

	private Circles() {
	}

	/**
	 * Returns the circles, sorted; those that share something are one.
	 *
	 * @param arrows what each thing uses; an arrow to itself makes no circle
	 */
	static List<SortedSet<String>> of(Map<String, ? extends Set<String>> arrows) {
		SortedMap<String, Set<String>> reached = new TreeMap<>();
		arrows.keySet().forEach(from -> reached.put(from, reachedFrom(from, arrows)));
		List<SortedSet<String>> circles = new ArrayList<>();
		Set<String> done = new TreeSet<>();
		reached.forEach((one, others) -> {
			SortedSet<String> circle = new TreeSet<>(others);
			circle.removeIf(other -> !reached.getOrDefault(other, Set.of()).contains(one));
			if (circle.size() > 1 && done.addAll(circle)) {
				circles.add(circle);
			}
		});
		return circles;
	}

	private static Set<String> reachedFrom(String from, Map<String, ? extends Set<String>> arrows) {
		Set<String> reached = new TreeSet<>();
		Deque<String> pending = new ArrayDeque<>(List.of(from));
		while (!pending.isEmpty()) {
			Set<String> next = arrows.get(pending.pop());
			if (next != null) {
				next.stream().filter(reached::add).forEach(pending::push);
			}
		}
		return reached;
	}
}
