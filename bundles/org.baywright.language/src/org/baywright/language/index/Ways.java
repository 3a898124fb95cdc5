package org.baywright.language.index;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/** Finds ways from one thing to another over what each leads to. */
public final class Ways {

	private Ways() {
	}

	/** Returns the first way from a thing to another one, both included; empty if there is none. */
	public static <T> List<T> between(T from, T to, Function<T, Collection<T>> next) {
		return between(from, to, next, new HashSet<>());
	}

	private static <T> List<T> between(T from, T to, Function<T, Collection<T>> next, Set<T> seen) {
		if (from.equals(to)) {
			return List.of(to);
		}
		if (seen.add(from)) {
			for (T each : next.apply(from)) {
				List<T> rest = between(each, to, next, seen);
				if (!rest.isEmpty()) {
					List<T> way = new ArrayList<>(List.of(from));
					way.addAll(rest);
					return way;
				}
			}
		}
		return List.of();
	}
}
