package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.function.ToIntFunction;

/**
 * Formulas of a slice as numbers in arrays, so that asking whether they hold is quick. Variables and verdicts are those of the
 * slice; of a variable each value has its own place in a table.
 */
final class Clauses {

	private static final byte KNOWN = 0;
	private static final byte STANDS = 1;
	private static final byte ABSENT = 2;
	private static final byte ALL = 3;
	private static final byte ANY = 4;

	/** A variable of which nobody can find out any more. */
	static final int LOST = -2;
	private byte[] kind = new byte[64];
	private int[] about = new int[64];
	private boolean[][] holds = new boolean[64][];
	private boolean[][] mayBe = new boolean[64][];
	/** Whether some value makes it hold, and whether each does. */
	private boolean[] some = new boolean[64];
	private boolean[] every = new boolean[64];
	private int[][] parts = new int[64][];
	private int count;

	/** What of a set of findings the questions are about. */
	interface Facts {

		/** Returns the value of a variable, {@link Program#OPEN} or {@link Clauses#LOST}. */
		int value(int var);

		boolean stands(int verdict);

		/** Returns whether a verdict stands or may come to. */
		boolean mayStand(int verdict);

		/** Returns whether a verdict that stands may cease to. */
		boolean mayFall(int verdict);
	}

	/**
	 * Adds a formula.
	 *
	 * @param var number of a program's variable here, or -1
	 * @param values for a number here the cells of the program's variable that its values stand for
	 */
	int add(Formula formula, Program program, int[] var, List<int[]> values, ToIntFunction<Integer> verdict) {
		if (formula instanceof Formula.Known lit) {
			int here = lit.var() < 0 ? -1 : var[lit.var()];
			if (here < 0) {
				return node(ANY, -1, null, null, new int[0]);
			}
			int[] cells = values.get(here);
			boolean[] now = new boolean[cells.length];
			boolean[] yet = new boolean[cells.length];
			for (int value = 0; value < cells.length; value++) {
				now[value] = lit.cells().contains(cells[value]);
				yet[value] = program.meant(lit.var(), cells[value]).meets(lit.cells());
			}
			return node(KNOWN, here, now, yet, null);
		} else if (formula instanceof Formula.Stands stands) {
			return node(stands.stands() ? STANDS : ABSENT, verdict.applyAsInt(stands.verdict()), null, null, null);
		}
		List<Integer> children = new ArrayList<>();
		Slice.parts(formula).forEach(part -> children.add(add(part, program, var, values, verdict)));
		return node(formula instanceof Formula.All ? ALL : ANY, -1, null, null, children.stream().mapToInt(Integer::intValue).toArray());
	}

	private int node(byte what, int of, boolean[] now, boolean[] yet, int[] children) {
		if (count == kind.length) {
			kind = Arrays.copyOf(kind, 2 * count);
			about = Arrays.copyOf(about, 2 * count);
			holds = Arrays.copyOf(holds, 2 * count);
			mayBe = Arrays.copyOf(mayBe, 2 * count);
			some = Arrays.copyOf(some, 2 * count);
			every = Arrays.copyOf(every, 2 * count);
			parts = Arrays.copyOf(parts, 2 * count);
		}
		kind[count] = what;
		about[count] = of;
		holds[count] = now;
		mayBe[count] = yet;
		some[count] = now != null && anyOf(now);
		every[count] = now != null && allOf(now);
		parts[count] = children;
		return count++;
	}

	boolean isVariable(int node) {
		return kind[node] == KNOWN;
	}

	/** Returns whether a formula asks for findings alone. */
	boolean isPlain(int node) {
		if (parts[node] == null) {
			return kind[node] == KNOWN;
		}
		for (int part : parts[node]) {
			if (!isPlain(part)) {
				return false;
			}
		}
		return true;
	}

	/** Returns whether a formula asks for a verdict not to stand. */
	boolean wantsAbsence(int node) {
		if (parts[node] == null) {
			return kind[node] == ABSENT;
		}
		for (int part : parts[node]) {
			if (wantsAbsence(part)) {
				return true;
			}
		}
		return false;
	}

	boolean isVerdict(int node) {
		return kind[node] == STANDS || kind[node] == ABSENT;
	}

	boolean wantsVerdict(int node) {
		return kind[node] == STANDS;
	}

	boolean wantsAll(int node) {
		return kind[node] == ALL;
	}

	/** Returns the variable or verdict that a node is about. */
	int about(int node) {
		return about[node];
	}

	/** Returns whether a value of the node's variable makes it hold. */
	boolean holdsWith(int node, int value) {
		return holds[node][value];
	}

	int[] parts(int node) {
		return parts[node];
	}

	/** Calls {@code use} for each part of a formula that is about a variable or a verdict. */
	void eachLeaf(int node, IntConsumer use) {
		if (parts[node] == null) {
			use.accept(node);
		} else {
			for (int part : parts[node]) {
				eachLeaf(part, use);
			}
		}
	}

	/** Returns whether a formula holds. */
	boolean holds(int node, Facts facts) {
		switch (kind[node]) {
		case KNOWN:
			int value = facts.value(about[node]);
			return value >= 0 && holds[node][value];
		case STANDS:
			return facts.stands(about[node]);
		case ABSENT:
			return !facts.stands(about[node]);
		default:
			boolean all = kind[node] == ALL;
			for (int part : parts[node]) {
				if (holds(part, facts) != all) {
					return !all;
				}
			}
			return all;
		}
	}

	/** Returns whether a formula holds or may come to, for all that is known without the laws. */
	boolean mayHold(int node, Facts facts) {
		switch (kind[node]) {
		case KNOWN:
			int value = facts.value(about[node]);
			return value >= 0 ? mayBe[node][value] : value == Program.OPEN && some[node];
		case STANDS:
			return facts.mayStand(about[node]);
		case ABSENT:
			return !facts.stands(about[node]) || facts.mayFall(about[node]);
		default:
			boolean all = kind[node] == ALL;
			for (int part : parts[node]) {
				if (mayHold(part, facts) != all) {
					return !all;
				}
			}
			return all;
		}
	}

	private static boolean anyOf(boolean[] values) {
		for (boolean value : values) {
			if (value) {
				return true;
			}
		}
		return false;
	}

	private static boolean allOf(boolean[] values) {
		for (boolean value : values) {
			if (!value) {
				return false;
			}
		}
		return true;
	}

	/** Returns whether each value of the node's variable makes it hold. */
	boolean holdsAlways(int node) {
		return every[node];
	}
}
