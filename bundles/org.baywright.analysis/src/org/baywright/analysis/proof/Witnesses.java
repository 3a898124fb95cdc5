package org.baywright.analysis.proof;

import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.IndexSet;

/**
 * Finds the smallest situation that shows something: as few findings as possible; among these the first in a fixed order
 * of variables and values. What comes out depends on the meaning of the question alone, not on what was asked before.
 */
final class Witnesses {

	private static final int MOST_COMBINATIONS = 64;

	private final Encoding encoding;
	private final Program program;
	private final SatSolver solver;
	private final Values values;
	/** For each variable a literal for "somebody made this finding"; an unread code comes with its silent module. */
	private final int[] made;
	private List<Integer> counter = List.of();

	Witnesses(Encoding encoding) {
		this.encoding = encoding;
		program = encoding.program;
		solver = encoding.solver;
		values = encoding.values;
		made = new int[program.variables.size()];
		for (int var = 0; var < made.length; var++) {
			made[var] = program.moduleOf[var] < 0 ? values.known(var)
					: values.knownIn(var, Encoding.only(Variable.UNREAD).complement(program.cells.get(var).count()));
		}
	}

	/** Returns the smallest situation in which all goals hold; empty if there is none or a limit was reached. */
	Optional<Situation> smallest(int... goals) {
		List<Integer> fixed = new ArrayList<>();
		for (int goal : goals) {
			fixed.add(goal);
		}
		if (ask(fixed) != Answer.YES) {
			return Optional.empty();
		}
		shrink(fixed);
		List<Integer> looked = fixKnown(fixed);
		for (int var = 0; var < program.variables.size(); var++) {
			if (program.isTrait(var) || looked.contains(var)) {
				fixValue(var, fixed);
			}
		}
		return Optional.of(situation(looked, fixed));
	}

	private Answer ask(List<Integer> assumptions) {
		return solver.solve(assumptions.stream().mapToInt(Integer::intValue).toArray());
	}

	private Answer askAlso(List<Integer> assumptions, int literal) {
		int[] all = new int[assumptions.size() + 1];
		for (int i = 0; i < assumptions.size(); i++) {
			all[i] = assumptions.get(i);
		}
		all[assumptions.size()] = literal;
		return solver.solve(all);
	}

	/** Bounds the number of known findings by the least possible one. Leaves a model of it in the solver. */
	private void shrink(List<Integer> fixed) {
		dropWhatIsNotNeeded(fixed);
		int least = countKnown();
		while (least > 0 && askAlso(fixed, -atLeast(least)) == Answer.YES) {
			least = countKnown();
		}
		fixed.add(-atLeast(least + 1));
		ask(fixed);
	}

	/** A quick first step, so that the counter stays small. */
	private void dropWhatIsNotNeeded(List<Integer> goals) {
		List<Integer> tried = new ArrayList<>(goals);
		for (int var = 0; var < program.variables.size(); var++) {
			if (!program.isTrait(var)) {
				boolean open = !solver.holds(values.known(var)) || askAlso(tried, -values.known(var)) == Answer.YES;
				tried.add(open ? -values.known(var) : values.known(var));
				if (!open) {
					ask(tried);
				}
			}
		}
	}

	private int countKnown() {
		int count = 0;
		for (int var = 0; var < program.variables.size(); var++) {
			if (!program.isTrait(var) && solver.holds(made[var])) {
				count++;
			}
		}
		return count;
	}

	/** Returns a literal that is forced to hold when at least so many findings are known. */
	private int atLeast(int number) {
		if (counter.size() < number) {
			counter = new ArrayList<>();
			for (int var = 0; var < program.variables.size(); var++) {
				if (!program.isTrait(var)) {
					addToCounter(made[var], number + 1);
				}
			}
			while (counter.size() < number) {
				counter.add(-SatSolver.TRUE);
			}
		}
		return counter.get(number - 1);
	}

	/** A sequential counter (Sinz 2005), one direction: it may only count too high. */
	private void addToCounter(int literal, int most) {
		List<Integer> next = new ArrayList<>();
		for (int i = 0; i <= Math.min(counter.size(), most - 1); i++) {
			int reached = solver.newLiteral();
			if (i < counter.size()) {
				solver.add(-counter.get(i), reached);
			}
			if (i == 0) {
				solver.add(-literal, reached);
			} else {
				solver.add(-literal, -counter.get(i - 1), reached);
			}
			next.add(reached);
		}
		counter = next;
	}

	private List<Integer> fixKnown(List<Integer> fixed) {
		List<Integer> looked = new ArrayList<>();
		for (int var = 0; var < program.variables.size(); var++) {
			if (program.isTrait(var)) {
				continue;
			}
			boolean open = !solver.holds(values.known(var)) || askAlso(fixed, -values.known(var)) == Answer.YES;
			fixed.add(open ? -values.known(var) : values.known(var));
			if (!open) {
				looked.add(var);
				ask(fixed);
			}
		}
		return looked;
	}

	private void fixValue(int var, List<Integer> fixed) {
		int cell = values.cell(var);
		while (cell > 0 && askAlso(fixed, values.in(var, IndexSet.range(0, cell - 1))) == Answer.YES) {
			cell = values.cell(var);
		}
		fixed.add(values.in(var, Encoding.only(cell)));
		ask(fixed);
	}

	private Situation situation(List<Integer> looked, List<Integer> fixed) {
		int[] cells = new int[program.variables.size()];
		for (int var = 0; var < cells.length; var++) {
			cells[var] = values.cell(var);
		}
		List<Integer> rest = new ArrayList<>(fixed);
		List<Integer> free = new ArrayList<>();
		List<Situation.Fact> facts = new ArrayList<>();
		for (int var = 0; var < cells.length; var++) {
			if (looked.contains(var)) {
				facts.add(fact(program, var, Encoding.only(cells[var])));
			} else if (program.isTrait(var)) {
				facts.add(trait(var, cells[var], rest, free));
			}
		}
		return new Situation(program.family, facts);
	}

	/**
	 * A trait does not matter if every value of it, with every value of the other traits that do not matter, shows the
	 * same.
	 */
	private Situation.Fact trait(int var, int cell, List<Integer> rest, List<Integer> free) {
		int pinned = values.in(var, Encoding.only(cell));
		Cells cut = program.cells.get(var);
		if (pinned != SatSolver.TRUE) {
			rest.remove(Integer.valueOf(pinned));
			free.add(var);
			if (!all(free, 0, rest)) {
				free.remove(Integer.valueOf(var));
				rest.add(pinned);
				return fact(program, var, Encoding.only(cell));
			}
		}
		return new Situation.Fact(program.variables.get(var), cut.values(IndexSet.range(0, cut.count() - 1)),
				cut.example(cell));
	}

	private boolean all(List<Integer> free, int from, List<Integer> rest) {
		if (from == 0 && free.stream().mapToLong(var -> program.cells.get(var).count()).reduce(1, (a, b) -> a * b)
				> MOST_COMBINATIONS) {
			return false; // then the trait is simply named
		} else if (from == free.size()) {
			return ask(rest) == Answer.YES;
		}
		for (int cell = 0; cell < program.cells.get(free.get(from)).count(); cell++) {
			List<Integer> with = new ArrayList<>(rest);
			with.add(values.in(free.get(from), Encoding.only(cell)));
			if (!all(free, from + 1, with)) {
				return false;
			}
		}
		return true;
	}

	static Situation.Fact fact(Program program, int var, IndexSet cells) {
		Cells cut = program.cells.get(var);
		return new Situation.Fact(program.variables.get(var), cut.values(cells), cut.example(cells.first()));
	}
}
