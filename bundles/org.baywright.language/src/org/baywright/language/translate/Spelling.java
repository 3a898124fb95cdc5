package org.baywright.language.translate;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the name that was probably meant. */
public final class Spelling {

	private Spelling() {
	}

	/**
	 * Returns the candidate with the fewest slips of the pen against the written name: a letter too many, too few,
	 * wrong, or two exchanged. More than a third of the letters is no slip. Among equals the first in alphabetical order
	 * is taken, so that the answer does not depend on the order of files.
	 */
	public static Optional<String> nearest(String written, Collection<String> candidates) {
		String word = written.toLowerCase(Locale.ROOT);
		int limit = Math.max(1, written.length() / 3);
		String best = null;
		int bestSlips = limit + 1;
		for (String candidate : candidates) {
			if (Math.abs(candidate.length() - written.length()) > Math.min(limit, bestSlips)) {
				continue;
			}
			int slips = slips(word, candidate.toLowerCase(Locale.ROOT), bestSlips);
			if (slips < bestSlips || slips == bestSlips && best != null && candidate.compareTo(best) < 0) {
				best = candidate;
				bestSlips = slips;
			}
		}
		return Optional.ofNullable(best);
	}

	/** Returns "Did you mean …?" or another advice if nothing is near. */
	static String advice(String written, Collection<String> candidates, String otherwise) {
		return nearest(written, candidates).map(name -> "Did you mean `" + name + "`?").orElse(otherwise);
	}

	/** Says a list as "`a`, `b` or `c`". */
	static String either(List<String> names) {
		StringBuilder out = new StringBuilder();
		for (int i = 0; i < names.size(); i++) {
			out.append(i == 0 ? "" : i == names.size() - 1 ? " or " : ", ").append('`').append(names.get(i)).append('`');
		}
		return out.toString();
	}

	/** The Damerau–Levenshtein distance with adjacent exchanges, or something above {@code limit} if it is above. */
	private static int slips(String one, String other, int limit) {
		int[] beforeLast = new int[other.length() + 1];
		int[] last = new int[other.length() + 1];
		int[] current = new int[other.length() + 1];
		for (int j = 0; j <= other.length(); j++) {
			last[j] = j;
		}
		for (int i = 1; i <= one.length(); i++) {
			current[0] = i;
			int least = i;
			for (int j = 1; j <= other.length(); j++) {
				int change = last[j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
				current[j] = Math.min(change, Math.min(last[j], current[j - 1]) + 1);
				if (i > 1 && j > 1 && one.charAt(i - 1) == other.charAt(j - 2) && one.charAt(i - 2) == other.charAt(j - 1)) {
					current[j] = Math.min(current[j], beforeLast[j - 2] + 1);
				}
				least = Math.min(least, current[j]);
			}
			if (least > limit) {
				return least;
			}
			int[] spare = beforeLast;
			beforeLast = last;
			last = current;
			current = spare;
		}
		return last[other.length()];
	}
}
