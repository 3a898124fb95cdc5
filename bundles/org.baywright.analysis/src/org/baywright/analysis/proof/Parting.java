package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;

import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;

/**
 * Finds the situations in which two programs of the same variables derive something else, as a list of regions: whatever
 * a situation of a region shows beside it, what is told of the region happens in it. What stands in no region is the same.
 */
final class Parting {

	/** So many regions are listed; that there are more is said. */
	private static final int MOST_REGIONS = 200;

	/**
	 * Situations in which something changes.
	 *
	 * @param facts what is known in all of them; the numbers of values are those of {@code domains}
	 * @param open what nobody knows yet in any of them
	 * @param domains the values of both programs, of what has a domain
	 * @param lost verdicts that stood and stand no more, sorted
	 * @param gained verdicts that stand now and did not before, sorted
	 */
	record Region(List<Situation.Fact> facts, List<Variable> open, Map<Variable, Domain> domains, List<Verdict> lost, List<Verdict> gained) {
	}

	private final Program old;
	private final Program now;
	private final Encoding before;
	private final Encoding after;
	private final SatSolver solver;
	private final Values values;
	private final List<Verdict> verdicts;
	private final List<Integer> lawful = new ArrayList<>();
	private final Set<String> undecided = new TreeSet<>();
	private boolean more;

	/**
	 * @param targets the verdicts that may differ
	 * @param conflictLimit see {@link SatSolver}
	 */
	Parting(Program old, Program now, Set<Verdict> targets, int conflictLimit) {
		this.old = old;
		this.now = now;
		before = Encoding.lawless(old, conflictLimit);
		after = before.beside(now);
		solver = before.solver;
		values = before.values;
		// what ends a job is looked at first
		verdicts = targets.stream().sorted(java.util.Comparator.comparing((Verdict verdict) -> !verdict.isEnd()).thenComparing(verdict -> verdict)).toList();
		lawful.add(laws(before));
		lawful.add(laws(after));
	}

	private int laws(Encoding encoding) {
		return Gates.and(solver, IntStream.range(0, encoding.program.lawFormulas.size()).mapToObj(encoding::law).toList());
	}

	/** Returns whether there are more regions than were listed. */
	boolean hasMore() {
		return more;
	}

	/** Returns the questions that a limit left open. */
	List<String> undecided() {
		return List.copyOf(undecided);
	}

	private static int literal(Encoding encoding, Verdict verdict) {
		int number = encoding.program.numberOf(verdict);
		return number < 0 ? -SatSolver.TRUE : encoding.verdict(number);
	}

	// ---- what is derived ---------------------------------------------------------------------------------------

	/** Returns the regions in which verdicts come or go, of situations that are possible before and now. */
	List<Region> regions() {
		Map<Verdict, Integer> fresh = new TreeMap<>();
		List<Region> regions = new ArrayList<>();
		for (Verdict verdict : verdicts) {
			int was = literal(before, verdict);
			int is = literal(after, verdict);
			int differs = Gates.or(solver, List.of(Gates.and(solver, List.of(was, -is)), Gates.and(solver, List.of(-was, is))));
			boolean open = differs != -SatSolver.TRUE;
			while (open) {
				open = false;
				int untold = fresh.computeIfAbsent(verdict, key -> solver.newLiteral());
				Answer answer = solver.solve(lawful.get(0), lawful.get(1), differs, untold);
				if (answer == Answer.UNDECIDED) {
					undecided.add("whether \u201c" + verdict.fault() + "\u201d comes out as before");
				} else if (answer == Answer.YES && regions.size() == MOST_REGIONS) {
					more = true;
				} else if (answer == Answer.YES) {
					open = add(regions, fresh, verdict, differs, untold);
				}
			}
		}
		return regions;
	}

	/** Adds the region round the smallest situation in which the verdict differs. */
	private boolean add(List<Region> regions, Map<Verdict, Integer> fresh, Verdict verdict, int differs, int untold) {
		Optional<Situation> smallest = new Witnesses(before).smallest(lawful.get(0), lawful.get(1), differs, untold);
		Optional<int[]> known = smallest.map(this::cells);
		if (known.isEmpty()) {
			undecided.add("in which situations \u201c" + verdict.fault() + "\u201d comes out otherwise");
			return false;
		}
		Program.Derived was = old.derive(known.get(), -1);
		Program.Derived is = now.derive(known.get(), -1);
		List<Verdict> lost = changed(old, was, now, is);
		List<Verdict> gained = changed(now, is, old, was);
		List<Integer> same = new ArrayList<>();
		lost.forEach(one -> same.addAll(List.of(literal(before, one), -literal(after, one))));
		gained.forEach(one -> same.addAll(List.of(-literal(before, one), literal(after, one))));
		Optional<List<Integer>> reason = Minimal.conflict(solver, List.of(lawful.get(0), lawful.get(1), -Gates.and(solver, same)), shown(known.get()));
		if (reason.isEmpty()) {
			undecided.add("in how many situations \u201c" + verdict.fault() + "\u201d comes out otherwise");
			return false;
		}
		Shown shown = told(known.get(), reason.get());
		regions.add(new Region(shown.facts, shown.open, shown.domains, lost, gained));
		for (List<Verdict> told : List.of(lost, gained)) {
			told.forEach(one -> exclude(shown.literals, fresh.computeIfAbsent(one, key -> solver.newLiteral())));
		}
		return true;
	}

	private List<Verdict> changed(Program from, Program.Derived here, Program other, Program.Derived there) {
		return verdicts.stream().filter(verdict -> stands(from, here, verdict) && !stands(other, there, verdict)).sorted().toList();
	}

	private static boolean stands(Program program, Program.Derived derived, Verdict verdict) {
		int number = program.numberOf(verdict);
		return number >= 0 && derived.verdicts()[number];
	}

	private void exclude(List<Integer> region, int fresh) {
		int[] clause = new int[region.size() + 1];
		for (int i = 0; i < region.size(); i++) {
			clause[i] = -region.get(i);
		}
		clause[region.size()] = -fresh;
		solver.add(clause);
	}

	private int[] cells(Situation situation) {
		int[] cells = new int[old.variables.size()];
		java.util.Arrays.fill(cells, Program.OPEN);
		situation.facts().forEach(fact -> {
			int var = old.numberOf(fact.variable());
			cells[var] = old.cells.get(var).of(fact.example());
		});
		return cells;
	}

	// ---- what can be -------------------------------------------------------------------------------------------

	/** Returns which vehicles and findings could not be together before and can be now. */
	List<Region> allowed() {
		return lawful(before, lawful.get(0), after, lawful.get(1));
	}

	/** Returns which vehicles and findings could be together before and cannot be now. */
	List<Region> forbidden() {
		return lawful(after, lawful.get(1), before, lawful.get(0));
	}

	/** Returns the situations that one side's laws shut out, wherever the other side's let some of them be. */
	private List<Region> lawful(Encoding strict, int forbids, Encoding lenient, int allows) {
		List<Region> regions = new ArrayList<>();
		int untold = solver.newLiteral();
		while (true) {
			int[] question = { strict.allKnown(), allows, -forbids, untold };
			Answer answer = solver.solve(question);
			if (answer == Answer.UNDECIDED) {
				undecided.add("which vehicles " + (lenient == after ? "can be now" : "cannot be now"));
			}
			more |= answer == Answer.YES && regions.size() == MOST_REGIONS;
			if (answer != Answer.YES || regions.size() == MOST_REGIONS) {
				return regions;
			}
			Optional<int[]> known = new Witnesses(before).smallest(question).map(this::cells);
			Optional<List<Integer>> reason = known.flatMap(cells -> Minimal.conflict(solver, List.of(forbids), shown(cells)));
			if (reason.isEmpty()) {
				undecided.add("which vehicles " + (lenient == after ? "can be now" : "cannot be now"));
				return regions;
			}
			Shown shown = told(known.get(), reason.get());
			regions.add(new Region(shown.facts, List.of(), shown.domains, List.of(), List.of()));
			exclude(shown.literals, untold);
		}
	}

	/** Returns which of the verdicts some situation brings about, before or now. */
	Set<Verdict> reached(boolean isNow) {
		Set<Verdict> reached = new HashSet<>();
		for (Verdict verdict : verdicts) {
			Answer answer = solver.solve(lawful.get(isNow ? 1 : 0), literal(isNow ? after : before, verdict));
			if (answer == Answer.UNDECIDED) {
				undecided.add("whether \u201c" + verdict.fault() + "\u201d can come out at all");
			} else if (answer == Answer.YES) {
				reached.add(verdict);
			}
		}
		return reached;
	}

	// ---- regions -----------------------------------------------------------------------------------------------

	/** What makes up a region. */
	private record Shown(List<Situation.Fact> facts, List<Variable> open, Map<Variable, Domain> domains, List<Integer> literals) {
	}

	/** What technicians look at first stands first, so that regions rather speak of that; what is open comes last. */
	private List<Integer> order(Function<Integer, Boolean> takes) {
		List<Integer> order = new ArrayList<>();
		for (Variable.Kind kind : List.of(Variable.Kind.SIGN, Variable.Kind.TEST, Variable.Kind.MODULE, Variable.Kind.CODE, Variable.Kind.TRAIT)) {
			IntStream.range(0, old.variables.size()).filter(var -> old.variables.get(var).kind() == kind && takes.apply(var)).forEach(order::add);
		}
		return order;
	}

	/** Returns literals that together say what is known and what is not. */
	private List<Integer> shown(int[] cells) {
		List<Integer> shown = new ArrayList<>();
		for (int var : order(var -> cells[var] != Program.OPEN)) {
			shown.add(values.known(var));
			List<Integer> own = values.exclusions(var, cells[var]);
			Collections.reverse(own); // the weakest first, so that they are preferred
			shown.addAll(own);
		}
		order(var -> cells[var] == Program.OPEN).forEach(var -> shown.add(-values.known(var)));
		shown.removeIf(literal -> literal == SatSolver.TRUE);
		return shown;
	}

	/** Says a reason in variables and values. A value counts only where it is known. */
	private Shown told(int[] cells, List<Integer> reason) {
		Set<Integer> chosen = new HashSet<>(reason);
		Map<Integer, IndexSet> left = new TreeMap<>();
		List<Variable> open = new ArrayList<>();
		List<Integer> literals = new ArrayList<>(reason);
		for (int var = 0; var < cells.length; var++) {
			int count = old.cells.get(var).count();
			if (cells[var] == Program.OPEN) {
				if (chosen.contains(-values.known(var))) {
					open.add(old.variables.get(var));
				}
				continue;
			}
			if (values.known(var) != SatSolver.TRUE && chosen.contains(values.known(var))) {
				left.put(var, IndexSet.range(0, count - 1));
			}
			for (int literal : values.exclusions(var, cells[var])) {
				if (chosen.contains(literal)) {
					left.merge(var, values.leaves(var, literal), IndexSet::intersect);
				}
			}
			if (left.containsKey(var) && values.known(var) != SatSolver.TRUE && !chosen.contains(values.known(var))) {
				literals.add(values.known(var));
			}
		}
		List<Situation.Fact> facts = new ArrayList<>();
		Map<Variable, Domain> domains = new TreeMap<>();
		left.forEach((var, cell) -> {
			Cells cut = old.cells.get(var);
			Variable variable = old.variables.get(var);
			facts.add(new Situation.Fact(variable, cut.values(cell), cut.example(cells[var])));
			old.domains.get(var).ifPresent(domain -> domains.put(variable, domain));
		});
		facts.sort(java.util.Comparator.comparing(Situation.Fact::variable));
		return new Shown(facts, open, domains, literals);
	}
}
