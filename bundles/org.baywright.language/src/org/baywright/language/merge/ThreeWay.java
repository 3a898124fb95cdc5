package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Joins two lists that both came of a third. */
final class ThreeWay {

	/** More pairs would take too long; so much is in no element that a person has written. */
	private static final long MOST_PAIRS = 25_000_000;

	private ThreeWay() {
	}

	/** Returns the list with the changes of both; nothing if they changed the same places in another way. */
	static Optional<List<String>> of(List<String> base, List<String> ours, List<String> theirs) {
		if ((long) base.size() * Math.max(ours.size(), theirs.size()) > MOST_PAIRS) {
			return Optional.empty();
		}
		int[] inOurs = matches(base, ours);
		int[] inTheirs = matches(base, theirs);
		List<String> joined = new ArrayList<>();
		int our = 0;
		int their = 0;
		int at = 0;
		while (true) {
			// what all three share, from here on
			int next = at;
			while (next < base.size() && (inOurs[next] < 0 || inTheirs[next] < 0)) {
				next++;
			}
			int ourEnd = next == base.size() ? ours.size() : inOurs[next];
			int theirEnd = next == base.size() ? theirs.size() : inTheirs[next];
			Optional<List<String>> part = Joining.changedOnce(base.subList(at, next), ours.subList(our, ourEnd), theirs.subList(their, theirEnd));
			if (part.isEmpty()) {
				return Optional.empty();
			}
			joined.addAll(part.get());
			if (next == base.size()) {
				return Optional.of(joined);
			}
			joined.add(base.get(next));
			at = next + 1;
			our = ourEnd + 1;
			their = theirEnd + 1;
		}
	}

	/** Returns for each place of a list where it stands in the other, in a longest list that both hold; -1 if it does not. */
	static int[] matches(List<String> base, List<String> other) {
		int[][] longest = new int[base.size() + 1][other.size() + 1];
		for (int i = base.size() - 1; i >= 0; i--) {
			for (int j = other.size() - 1; j >= 0; j--) {
				longest[i][j] = base.get(i).equals(other.get(j)) ? longest[i + 1][j + 1] + 1 : Math.max(longest[i + 1][j], longest[i][j + 1]);
			}
		}
		int[] found = new int[base.size()];
		Arrays.fill(found, -1);
		for (int i = 0, j = 0; i < base.size() && j < other.size();) {
			if (base.get(i).equals(other.get(j))) {
				found[i++] = j++;
			} else if (longest[i + 1][j] >= longest[i][j + 1]) {
				i++;
			} else {
				j++;
			}
		}
		return found;
	}
}
