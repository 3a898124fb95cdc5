package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Rule;

/**
 * Finds the situations in which two programs of the same variables derive something else, as a list of regions: whatever
 * a situation of a region shows beside it, what is told of the region happens in it. What stands in no region is the same.
 */
final class Parting {

	/** So many regions are listed; that there are more is said. */
	private static final int MOST_REGIONS = 100;

	/**
	 * Situations in which something changes.
	 *
	 * @param direct whether edited rules themselves say so, and not others that look at what they say
	 * @param facts what is known in all of them; the numbers of values are those of {@code domains}
	 * @param open what nobody knows yet in any of them
	 * @param domains the values of both programs, of what has a domain
	 * @param with verdicts that stand in all of them, before and now, sorted
	 * @param without verdicts that stand in none of them, before or now, sorted
	 * @param anyway verdicts that no rule brings about which is as before, sorted
	 * @param lost verdicts that rules brought about that do so no more, sorted
	 * @param gained verdicts that rules bring about now that did not do so before, sorted
	 */
	record Region(boolean direct, List<Situation.Fact> facts, List<Variable> open, Map<Variable, Domain> domains, List<Verdict> with, List<Verdict> without, List<Verdict> anyway, List<Verdict> lost,
			List<Verdict> gained) {
	}

	private final Program old;
	private final Program now;
	private final Encoding before;
	private final Encoding after;
	private final SatSolver solver;
	private final Values values;
	private final List<Verdict> verdicts;
	private final List<Pass> passes;
	private final List<Integer> lawful = new ArrayList<>();
	private final Set<String> undecided = new TreeSet<>();
	private boolean more;

	/**
	 * @param targets the verdicts that may differ
	 * @param edited whether a rule of either program is not as in the other
	 * @param affected whether a rule may do something else than before: it was edited, or it looks at a verdict that may differ
	 * @param conflictLimit see {@link SatSolver}
	 */
	Parting(Program old, Program now, Set<Verdict> targets, Predicate<Rule> edited, Predicate<Rule> affected, int conflictLimit) {
		this.old = old;
		this.now = now;
		before = Encoding.lawless(old, conflictLimit);
		after = before.beside(now);
		solver = before.solver;
		values = before.values;
		// what ends a job is looked at first
		verdicts = targets.stream().sorted(Comparator.comparing((Verdict verdict) -> !verdict.isEnd()).thenComparing(verdict -> verdict)).toList();
		lawful.add(laws(before));
		lawful.add(laws(after));
		passes = List.of(new Pass(edited), new Pass(affected));
	}

	/** A way of telling what changes: by some of the rules, in what these look at. */
	private final class Pass {
		private final Predicate<Rule> rules;
		private final Set<Integer> looked = new HashSet<>();
		private final Set<Verdict> context = new TreeSet<>();
		private final Map<Turn, Integer> done = new HashMap<>();

		Pass(Predicate<Rule> rules) {
			this.rules = rules;
			look(old);
			look(now);
		}

		private void look(Program program) {
			program.branches.stream().filter(branch -> rules.test(program.rules.get(branch.rule()))).forEach(branch -> branch.body().eachLeaf(leaf -> {
				if (leaf instanceof Formula.Known known && known.var() >= 0) {
					looked.add(known.var());
				} else if (leaf instanceof Formula.Stands stands) {
					context.add(program.verdicts.get(stands.verdict()));
				}
			}));
		}

		/** Returns a literal for "some of these rules, or just others, bring the verdict about". */
		private int brought(Encoding encoding, Verdict verdict, boolean byThese) {
			int number = encoding.program.numberOf(verdict);
			return number < 0 ? -SatSolver.TRUE : Gates.or(solver, encoding.program.derivedBy.get(number).stream()
					.filter(b -> rules.test(encoding.program.rules.get(encoding.program.branches.get(b).rule())) == byThese).map(encoding::body).toList());
		}

		/** Returns a literal for "these rules make the verdict come or go: they bring it about on one side and not on the other". */
		private int done(Turn turn) {
			return done.computeIfAbsent(turn, key -> both(brought(turn.comes ? after : before, turn.verdict, true), -brought(turn.comes ? before : after, turn.verdict, true)));
		}
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

	private int both(int one, int other) {
		return Gates.and(solver, List.of(one, other));
	}

	/** A verdict that comes, or goes, with a literal for that. */
	private final class Turn {
		private final Verdict verdict;
		private final boolean comes;
		private final int happens;
		private final int untold = solver.newLiteral();

		Turn(Verdict verdict, boolean comes) {
			this.verdict = verdict;
			this.comes = comes;
			happens = both(literal(comes ? after : before, verdict), -literal(comes ? before : after, verdict));
		}
	}

	/**
	 * Returns the regions in which verdicts come or go, of situations that are possible before and now: first what edited rules
	 * say by themselves, then what follows from it. A verdict that other rules bring about as well stands before and now; a
	 * region may hold such situations beside others.
	 */
	List<Region> regions() {
		List<Turn> turns = verdicts.stream().flatMap(verdict -> Stream.of(new Turn(verdict, true), new Turn(verdict, false)))
				.filter(turn -> turn.happens != -SatSolver.TRUE).toList();
		List<Region> regions = new ArrayList<>();
		for (Pass pass : passes) {
			boolean direct = pass == passes.get(0);
			for (Turn turn : turns) {
				// what edited rules do not say themselves comes in the second pass
				int done = direct ? pass.done(turn) : SatSolver.TRUE;
				boolean open = done != -SatSolver.TRUE;
				while (open) {
					open = false;
					Answer answer = solver.solve(lawful.get(0), lawful.get(1), turn.happens, turn.untold, done);
					if (answer == Answer.UNDECIDED) {
						undecided.add("whether \u201c" + turn.verdict.fault() + "\u201d comes out as before");
					} else if (answer == Answer.YES && regions.size() == MOST_REGIONS) {
						more = true;
					} else if (answer == Answer.YES) {
						open = add(regions, turns, turn, pass);
					}
				}
			}
		}
		return regions;
	}

	/** Adds the region round the situation in the solver in which the verdict comes or goes. */
	private boolean add(List<Region> regions, List<Turn> turns, Turn turn, Pass pass) {
		int[] known = before.knownCells();
		Context standing = standing(pass);
		List<Integer> soft = shown(known, pass.looked::contains);
		soft.addAll(standing.verdicts.keySet());
		soft.addAll(shown(known, var -> !pass.looked.contains(var)));
		order(var -> known[var] == Program.OPEN).forEach(var -> soft.add(-values.known(var)));
		Optional<List<Integer>> reason = Minimal.conflict(solver, List.of(lawful.get(0), lawful.get(1), -pass.done(turn)), soft);
		if (reason.isEmpty()) {
			undecided.add("in how many situations \u201c" + turn.verdict.fault() + "\u201d comes out otherwise");
			return false;
		}
		Shown shown = told(known, reason.get(), true);
		List<Turn> told = turns.stream().filter(other -> other == turn || isUntold(shown.literals, other, pass)).toList();
		List<Verdict> lost = told.stream().filter(other -> !other.comes).map(other -> other.verdict).sorted().toList();
		List<Verdict> gained = told.stream().filter(other -> other.comes).map(other -> other.verdict).sorted().toList();
		regions.add(new Region(pass == passes.get(0), shown.facts, shown.open, shown.domains, standing.among(shown.literals, Stand.BOTH),
				standing.among(shown.literals, Stand.NEITHER), standing.among(shown.literals, Stand.NOT_ANYWAY), lost, gained));
		told.forEach(other -> exclude(shown.literals, other.untold));
		return true;
	}

	/** Returns whether a verdict comes or goes in a region too, in some situations of it in which no other region tells so. */
	private boolean isUntold(List<Integer> region, Turn turn, Pass pass) {
		int done = pass.done(turn);
		return done != -SatSolver.TRUE && ask(region, -done) == Answer.NO && ask(region, both(turn.happens, turn.untold)) == Answer.YES;
	}

	private Answer ask(List<Integer> region, int literal) {
		int[] question = new int[region.size() + 3];
		for (int i = 0; i < region.size(); i++) {
			question[i] = region.get(i);
		}
		question[region.size()] = lawful.get(0);
		question[region.size() + 1] = lawful.get(1);
		question[region.size() + 2] = literal;
		return solver.solve(question);
	}

	/** How a verdict that rules look at stands on both sides. */
	private enum Stand {
		/** Before and now. */
		BOTH,
		/** Neither before nor now. */
		NEITHER,
		/** On one side, by rules that may do something else than before, and by no other. */
		NOT_ANYWAY
	}

	/** Verdicts that rules look at with how they stand, by literal. */
	private record Context(Map<Integer, Verdict> verdicts, Map<Integer, Stand> stands) {

		List<Verdict> among(List<Integer> region, Stand stand) {
			return verdicts.entrySet().stream().filter(entry -> region.contains(entry.getKey()) && stands.get(entry.getKey()) == stand).map(Map.Entry::getValue)
					.sorted().toList();
		}
	}

	/** Returns how the verdicts stand in the situation in the solver. */
	private Context standing(Pass pass) {
		Context all = new Context(new LinkedHashMap<>(), new HashMap<>());
		Map<Verdict, Stand> stands = new LinkedHashMap<>();
		pass.context.forEach(verdict -> {
			boolean was = solver.holds(literal(before, verdict));
			stands.put(verdict, was != solver.holds(literal(after, verdict)) ? Stand.NOT_ANYWAY : was ? Stand.BOTH : Stand.NEITHER);
		});
		stands.forEach((verdict, stand) -> {
			int was = literal(before, verdict);
			int is = literal(after, verdict);
			int literal = stand == Stand.BOTH ? both(was, is) : stand == Stand.NEITHER ? both(-was, -is) : -pass.brought(after, verdict, false);
			if (literal != SatSolver.TRUE) {
				all.verdicts.put(literal, verdict);
				all.stands.put(literal, stand);
			}
		});
		return all;
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
		Arrays.fill(cells, Program.OPEN);
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
			Optional<List<Integer>> reason = known.flatMap(cells -> Minimal.conflict(solver, List.of(forbids), shown(cells, var -> true)));
			if (reason.isEmpty()) {
				undecided.add("which vehicles " + (lenient == after ? "can be now" : "cannot be now"));
				return regions;
			}
			Shown shown = told(known.get(), reason.get(), false);
			regions.add(new Region(true, shown.facts, List.of(), shown.domains, List.of(), List.of(), List.of(), List.of(), List.of()));
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
	private List<Integer> order(Predicate<Integer> takes) {
		List<Integer> order = new ArrayList<>();
		for (Variable.Kind kind : List.of(Variable.Kind.SIGN, Variable.Kind.TEST, Variable.Kind.MODULE, Variable.Kind.CODE, Variable.Kind.TRAIT)) {
			IntStream.range(0, old.variables.size()).filter(var -> old.variables.get(var).kind() == kind && takes.test(var)).forEach(order::add);
		}
		return order;
	}

	/** Returns literals that together say what is known of some variables. */
	private List<Integer> shown(int[] cells, Predicate<Integer> some) {
		List<Integer> shown = new ArrayList<>();
		for (int var : order(var -> cells[var] != Program.OPEN && some.test(var))) {
			shown.add(values.known(var));
			List<Integer> own = values.exclusions(var, cells[var]);
			Collections.reverse(own); // the weakest first, so that they are preferred
			shown.addAll(own);
		}
		shown.removeIf(literal -> literal == SatSolver.TRUE);
		return shown;
	}

	/**
	 * Says a reason in variables and values. A value counts only where it is known.
	 *
	 * @param lawful whether to leave out what no vehicle shows that obeys the laws of both
	 */
	private Shown told(int[] cells, List<Integer> reason, boolean lawful) {
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
		if (lawful) {
			left.replaceAll((var, among) -> possible(literals, var, among));
		}
		List<Situation.Fact> facts = new ArrayList<>();
		Map<Variable, Domain> domains = new TreeMap<>();
		left.forEach((var, cell) -> {
			Cells cut = old.cells.get(var);
			Variable variable = old.variables.get(var);
			facts.add(new Situation.Fact(variable, cut.values(cell), cut.example(cells[var])));
			old.domains.get(var).ifPresent(domain -> domains.put(variable, domain));
		});
		facts.sort(Comparator.comparing(Situation.Fact::variable));
		return new Shown(facts, open, domains, literals);
	}

	/** Returns the cells that some vehicle shows in the region; what laws rule out beside the rest need not be told. */
	private IndexSet possible(List<Integer> region, int var, IndexSet among) {
		if (among.runCount() == 1 && among.low(0) == among.high(0) || old.lawFormulas.isEmpty() && now.lawFormulas.isEmpty()) {
			return among;
		}
		IndexSet possible = IndexSet.EMPTY;
		for (int run = 0; run < among.runCount(); run++) {
			for (int cell = among.low(run); cell <= among.high(run); cell++) {
				if (ask(region, values.in(var, IndexSet.range(cell, cell))) != Answer.NO) {
					possible = possible.union(IndexSet.range(cell, cell));
				}
			}
		}
		return possible;
	}
}
