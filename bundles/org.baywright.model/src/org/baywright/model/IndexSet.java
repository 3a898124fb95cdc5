package org.baywright.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * An immutable set of value numbers of a {@link Domain}, kept as sorted, disjoint, closed runs that do not touch. Equal
 * sets have equal representations.
 */
public final class IndexSet {

	/** The set without members. */
	public static final IndexSet EMPTY = new IndexSet(new int[0]);

	private final int[] runs; // low, high, low, high ...

	private IndexSet(int[] runs) {
		this.runs = runs;
	}

	/** Returns the set of all numbers from {@code low} to {@code high}; empty if {@code high < low}. */
	public static IndexSet range(int low, int high) {
		return high < low ? EMPTY : new IndexSet(new int[] { low, high });
	}

	/** Returns the set of all values of a domain. */
	public static IndexSet all(Domain domain) {
		return range(0, domain.size() - 1);
	}

	public boolean isEmpty() {
		return runs.length == 0;
	}

	/** Returns how many runs the set has. */
	public int runCount() {
		return runs.length / 2;
	}

	public int low(int run) {
		return runs[2 * run];
	}

	public int high(int run) {
		return runs[2 * run + 1];
	}

	/** Returns the least member. @throws ArrayIndexOutOfBoundsException if the set is empty */
	public int first() {
		return runs[0];
	}

	/** Returns the greatest member. @throws ArrayIndexOutOfBoundsException if the set is empty */
	public int last() {
		return runs[runs.length - 1];
	}

	public boolean contains(int index) {
		for (int i = 0; i < runs.length; i += 2) {
			if (index >= runs[i] && index <= runs[i + 1]) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether the sets have a member in common. */
	public boolean meets(IndexSet other) {
		for (int i = 0, j = 0; i < runs.length && j < other.runs.length;) {
			if (Math.max(runs[i], other.runs[j]) <= Math.min(runs[i + 1], other.runs[j + 1])) {
				return true;
			}
			if (runs[i + 1] < other.runs[j + 1]) {
				i += 2;
			} else {
				j += 2;
			}
		}
		return false;
	}

	public IndexSet intersect(IndexSet other) {
		List<int[]> out = new ArrayList<>();
		for (int i = 0, j = 0; i < runs.length && j < other.runs.length;) {
			int low = Math.max(runs[i], other.runs[j]);
			int high = Math.min(runs[i + 1], other.runs[j + 1]);
			if (low <= high) {
				out.add(new int[] { low, high });
			}
			if (runs[i + 1] < other.runs[j + 1]) {
				i += 2;
			} else {
				j += 2;
			}
		}
		return of(out);
	}

	public IndexSet union(IndexSet other) {
		List<int[]> all = new ArrayList<>();
		for (int i = 0; i < runs.length; i += 2) {
			all.add(new int[] { runs[i], runs[i + 1] });
		}
		for (int i = 0; i < other.runs.length; i += 2) {
			all.add(new int[] { other.runs[i], other.runs[i + 1] });
		}
		return of(all);
	}

	/** Returns the values from 0 to {@code size - 1} that are not in this set. */
	public IndexSet complement(int size) {
		List<int[]> out = new ArrayList<>();
		int next = 0;
		for (int i = 0; i < runs.length; i += 2) {
			if (runs[i] > next) {
				out.add(new int[] { next, Math.min(runs[i] - 1, size - 1) });
			}
			next = Math.max(next, runs[i + 1] + 1);
		}
		if (next <= size - 1) {
			out.add(new int[] { next, size - 1 });
		}
		return of(out);
	}

	private static IndexSet of(List<int[]> runs) {
		if (runs.isEmpty()) {
			return EMPTY;
		}
		runs.sort((a, b) -> Integer.compare(a[0], b[0]));
		List<int[]> joined = new ArrayList<>();
		for (int[] run : runs) {
			int[] last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
			if (last != null && run[0] <= last[1] + 1) {
				last[1] = Math.max(last[1], run[1]);
			} else {
				joined.add(run.clone());
			}
		}
		int[] flat = new int[2 * joined.size()];
		for (int i = 0; i < joined.size(); i++) {
			flat[2 * i] = joined.get(i)[0];
			flat[2 * i + 1] = joined.get(i)[1];
		}
		return new IndexSet(flat);
	}

	@Override
	public boolean equals(Object other) {
		return other instanceof IndexSet set && Arrays.equals(runs, set.runs);
	}

	@Override
	public int hashCode() {
		return Arrays.hashCode(runs);
	}

	@Override
	public String toString() {
		return Arrays.toString(runs);
	}
}
