package org.baywright.presenter.review;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.baywright.model.Span;
import org.baywright.model.words.Words;

/**
 * In which situations something changes, and what, in words.
 *
 * @param families names of the vehicle families
 * @param vehicles says families
 * @param like what the vehicles are like
 * @param found what is found, or is not; all of it
 * @param details what changes
 */
record Where(List<String> families, Function<List<String>, String> vehicles, List<String> like, List<String> found, List<String> details) {

	/** Returns the same situations in fewer lines: of two that differ in one finding, or in their families, one is made. */
	static List<Where> joined(List<Where> all) {
		List<Where> left = new ArrayList<>();
		for (Where one : all) {
			Where next = one;
			for (int i = 0; i < left.size(); i++) {
				Optional<Where> both = left.get(i).and(next);
				if (both.isPresent()) {
					next = both.get();
					left.remove(i);
					i = -1; // what came of it may go together with one before
				}
			}
			left.add(next);
		}
		return left;
	}

	private Optional<Where> and(Where other) {
		if (!details.equals(other.details) || !like.equals(other.like)) {
			return Optional.empty();
		} else if (found.equals(other.found)) {
			Set<String> both = new LinkedHashSet<>(families);
			both.addAll(other.families);
			return Optional.of(new Where(List.copyOf(both), vehicles, like, found, details));
		}
		List<String> mine = found.stream().filter(part -> !other.found.contains(part)).toList();
		List<String> others = other.found.stream().filter(part -> !found.contains(part)).toList();
		if (!families.equals(other.families) || mine.size() != 1 || others.size() != 1 || isProviso(mine.get(0)) || isProviso(others.get(0))) {
			return Optional.empty();
		}
		List<String> either = new ArrayList<>(found);
		either.set(found.indexOf(mine.get(0)), mine.get(0) + " or " + others.get(0));
		return Optional.of(new Where(families, vehicles, like, either, details));
	}

	private static boolean isProviso(String part) {
		return part.startsWith("unless ") || part.startsWith("while ");
	}

	Compared.Entry entry() {
		String what = found.isEmpty() ? "whatever is found" : String.join("; ", found);
		return new Compared.Entry(vehicles.apply(families) + (like.isEmpty() ? "" : " with " + Words.and(like)) + ": " + what, details, Span.NONE);
	}
}
