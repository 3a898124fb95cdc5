package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.model.IndexSet;

/**
 * The values of a domain cut into runs that no rule tells apart.
 */
public final class Cells {

	private final int[] starts;
	private final int size;

	private Cells(int[] starts, int size) {
		this.starts = starts;
		this.size = size;
	}

	public int count() {
		return starts.length;
	}

	public int low(int cell) {
		return starts[cell];
	}

	public int high(int cell) {
		return cell + 1 < starts.length ? starts[cell + 1] - 1 : size - 1;
	}

	/** Returns the cell of a value number. */
	public int of(int value) {
		int at = Arrays.binarySearch(starts, value);
		return at >= 0 ? at : -at - 2;
	}

	/** Returns the cells of a set of values; the set must have been among those the cells were cut for. */
	public IndexSet of(IndexSet values) {
		IndexSet cells = IndexSet.EMPTY;
		for (int run = 0; run < values.runCount(); run++) {
			cells = cells.union(IndexSet.range(of(values.low(run)), of(values.high(run))));
		}
		return cells;
	}

	/** Returns all values of the cells. */
	public IndexSet values(IndexSet cells) {
		IndexSet values = IndexSet.EMPTY;
		for (int run = 0; run < cells.runCount(); run++) {
			values = values.union(IndexSet.range(low(cells.low(run)), high(cells.high(run))));
		}
		return values;
	}

	/** Returns the value that shows a cell best: the one next to a limit. */
	public int example(int cell) {
		return cell == 0 && count() > 1 ? high(cell) : low(cell);
	}

	/** Collects the sets that must be told apart. */
	public static final class Cutter {
		private final Set<Integer> starts = new TreeSet<>(Set.of(0));
		private final int size;

		/** @param size number of values, greater than 0 */
		Cutter(int size) {
			this.size = size;
		}

		void cut(IndexSet values) {
			for (int run = 0; run < values.runCount(); run++) {
				starts.add(values.low(run));
				if (values.high(run) + 1 < size) {
					starts.add(values.high(run) + 1);
				}
			}
		}

		Cells cells() {
			return new Cells(starts.stream().mapToInt(Integer::intValue).toArray(), size);
		}
	}
}
