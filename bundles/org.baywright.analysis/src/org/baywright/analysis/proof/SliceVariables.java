package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.Variable;

/**
 * The variables of a slice and their values, by number: what may be asked for comes first, in order. Values that neither a rule of
 * the slice nor a law tells apart are one. Immutable.
 */
final class SliceVariables {

	/** What may be asked for. */
	final List<Variable> findings;
	/** For each variable its number in the program, and for each of the program its number here, or -1. */
	final int[] inProgram;
	final int[] here;
	/** For each variable the cells of the program that its values stand for, and for each cell of the program its value. */
	final List<int[]> cellsOf = new ArrayList<>();
	final List<int[]> valueOf = new ArrayList<>();

	private final Program program;
	private final LawfulValues lawful;
	private final Slice slice;
	private final boolean[] isSign;
	/** For each variable that of the module that is asked for it; -1 for others. */
	private final int[] moduleOf;
	/** For each variable what it may be whatever is found of others; {@code null} where laws tie it to others. */
	private final List<int[]> free = new ArrayList<>();

	SliceVariables(LawfulValues lawful, Slice slice) {
		this.lawful = lawful;
		this.slice = slice;
		program = slice.program;
		List<Integer> order = new ArrayList<>(slice.asked.stream().boxed().sorted((a, b) -> program.variables.get(a).compareTo(program.variables.get(b))).toList());
		findings = order.stream().map(program.variables::get).toList();
		mentioned().stream().filter(var -> !slice.asked.get(var)).forEach(order::add);
		inProgram = order.stream().mapToInt(Integer::intValue).toArray();
		here = new int[program.variables.size()];
		Arrays.fill(here, -1);
		isSign = new boolean[inProgram.length];
		for (int var = 0; var < inProgram.length; var++) {
			here[inProgram[var]] = var;
			isSign[var] = program.variables.get(inProgram[var]).kind() == Variable.Kind.SIGN;
		}
		moduleOf = Arrays.stream(inProgram).map(var -> program.moduleOf[var] < 0 ? -1 : here[program.moduleOf[var]]).toArray();
		for (int var : inProgram) {
			cutValues(var);
		}
		for (int var = 0; var < inProgram.length; var++) {
			free.add(lawful.isTied(inProgram[var]) ? null : allowed(slice.cells.clone(), var));
		}
	}

	/** Returns the variables that branches of the slice look at, with the modules of codes, ascending. */
	private List<Integer> mentioned() {
		BitSet mentioned = new BitSet();
		slice.branches.stream().forEach(b -> program.branches.get(b).body().eachLeaf(leaf -> {
			if (leaf instanceof Formula.Known lit && lit.var() >= 0 && (slice.cells[lit.var()] != Program.OPEN || slice.asked.get(lit.var()))) {
				mentioned.set(lit.var());
			}
		}));
		mentioned.or(slice.asked);
		for (int var : mentioned.stream().toArray()) {
			if (program.moduleOf[var] >= 0) {
				mentioned.set(program.moduleOf[var]);
			}
		}
		return mentioned.stream().boxed().toList();
	}

	/** Cells with which every branch of the slice holds alike are one value, if no law tells them apart. */
	private void cutValues(int var) {
		int count = program.cells.get(var).count();
		List<Formula.Known> literals = new ArrayList<>();
		slice.branches.stream().forEach(b -> program.branches.get(b).body().eachLeaf(leaf -> {
			if (leaf instanceof Formula.Known lit && lit.var() == var) {
				literals.add(lit);
			}
		}));
		boolean code = program.moduleOf[var] >= 0;
		boolean merges = !lawful.isTied(var) && (code || program.variables.get(var).kind() == Variable.Kind.TEST);
		Map<List<Boolean>, Integer> classes = new HashMap<>();
		List<Integer> first = new ArrayList<>();
		int[] value = new int[count];
		for (int cell = 0; cell < count; cell++) {
			int of = cell;
			List<Boolean> shows = literals.stream().map(lit -> lit.cells().contains(of)).toList();
			boolean alone = !merges || code && (cell == Variable.PRESENT || cell == Variable.UNREAD);
			Integer known = alone ? null : classes.get(shows);
			if (known == null) {
				known = first.size();
				first.add(cell);
				if (!alone) {
					classes.put(shows, known);
				}
			}
			value[cell] = known;
		}
		cellsOf.add(first.stream().mapToInt(Integer::intValue).toArray());
		valueOf.add(value);
	}

	int count() {
		return inProgram.length;
	}

	boolean isFinding(int var) {
		return var < findings.size();
	}

	boolean isSign(int var) {
		return isSign[var];
	}

	// ---- sets of findings ------------------------------------------------------------------------------------

	/** Returns the value of each variable at the beginning, or {@link Program#OPEN}. */
	int[] begin() {
		int[] values = new int[inProgram.length];
		for (int var = 0; var < values.length; var++) {
			int cell = slice.cells[inProgram[var]];
			values[var] = cell == Program.OPEN ? Program.OPEN : valueOf.get(var)[cell];
		}
		return values;
	}

	/** Returns what is known, in cells of the program. */
	int[] cells(int[] values) {
		int[] cells = slice.cells.clone();
		for (int var = 0; var < values.length; var++) {
			cells[inProgram[var]] = values[var] < 0 ? Program.OPEN : cellsOf.get(var)[values[var]];
		}
		return cells;
	}

	/** Sets a finding, and with it what it tells of its module or of the codes of this. */
	void set(int[] values, int finding, int value, BitSet changed) {
		put(values, finding, value, changed);
		boolean isModule = findings.get(finding).kind() == Variable.Kind.MODULE;
		int module = isModule ? finding : moduleOf[finding];
		if (module >= 0) {
			boolean silent = isModule ? value == Variable.SILENT : cellsOf.get(finding)[value] == Variable.UNREAD;
			put(values, module, valueOf.get(module)[silent ? Variable.SILENT : Variable.ANSWERS], changed);
			for (int code = 0; silent && code < values.length; code++) {
				if (moduleOf[code] == module) {
					put(values, code, valueOf.get(code)[Variable.UNREAD], changed);
				}
			}
		}
	}

	private static void put(int[] values, int var, int value, BitSet changed) {
		values[var] = value;
		changed.set(var);
	}

	/** Returns the values of a finding that some vehicle with these findings has; also those of which that could not be decided. */
	int[] possible(int[] values, int finding) {
		int module = moduleOf[finding];
		boolean asked = module >= 0 && values[module] >= 0;
		return free.get(finding) != null && !asked ? free.get(finding) : allowed(cells(values), finding);
	}

	/** @param cells what is known, in cells of the program */
	private int[] allowed(int[] cells, int var) {
		int[] value = valueOf.get(var);
		return lawful.possible(cells, inProgram[var]).stream().mapToInt(cell -> value[cell]).distinct().sorted().toArray();
	}
}
