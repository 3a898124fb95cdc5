package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.IntPredicate;

import org.baywright.analysis.Consultation;
import org.baywright.analysis.Demand;
import org.baywright.analysis.Listener;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/** All rules of one family, asked what becomes of them when some of a vehicle is known. */
public final class Study implements Consultation {

	private final RuleBase base;
	private final ProgramBuilder builder;
	private final Program program;
	private final int conflictLimit;
	private final Map<Integer, List<Integer>> demandLiterals = new HashMap<>();
	private final Candidates candidates;
	private Encoding encoding;
	private LawfulValues lawful;

	/** @param conflictLimit conflicts after which a question stays undecided, 1 or more */
	public Study(RuleBase base, String family, int conflictLimit) {
		this.base = base;
		this.conflictLimit = conflictLimit;
		Draft draft = Draft.of(base, family);
		builder = new ProgramBuilder(base, family,
				draft.rules().stream().sorted(Comparator.comparing(Rule::name)).toList(), draft.laws(),
				draft.exclusives());
		program = builder.build();
		candidates = new Candidates(program);
	}

	@Override
	public Advice advise(List<Reading> readings, Listener listener) {
		if (!program.isStratified()) {
			return new Advice("The rules go round in a circle, so nothing can be derived.", List.of(), List.of(),
					List.of());
		}
		if (encoding == null) {
			encoding = new Encoding(program, conflictLimit, false);
			lawful = new LawfulValues(program, conflictLimit);
		}
		Bench bench = new Bench(base, program, encoding);
		List<Clash> clashes = new ArrayList<>(bench.note(readings));
		boolean sound = clashes.isEmpty();
		if (sound && bench.ask() == Answer.NO) {
			sound = false;
			clashes.add(new Laws(program, conflictLimit).clash(bench));
		}
		Program.Derived derived = bench.run().derived();
		Answer[] possible = sound ? possible(bench, derived, listener)
				: answers(Answer.UNDECIDED, program.branches.size());
		List<Standing> standings = new ArrayList<>();
		for (int rule = 0; rule < program.rules.size(); rule++) {
			stopIfAsked(listener);
			standings.add(standing(rule, bench, derived, possible));
		}
		return new Advice("", clashes, standings, verdicts(bench.run()));
	}

	private static void stopIfAsked(Listener listener) {
		if (listener.isCancelled()) {
			throw new CancellationException();
		}
	}

	private static Answer[] answers(Answer answer, int count) {
		Answer[] all = new Answer[count];
		Arrays.fill(all, answer);
		return all;
	}

	/** Returns for each branch whether it can fire yet; one guess that is confirmed, or one model, answers for all branches that hold in it. */
	private Answer[] possible(Bench bench, Program.Derived derived, Listener listener) {
		Answer[] possible = new Answer[program.branches.size()];
		for (int b = 0; b < possible.length; b++) {
			if (derived.fired()[b]) {
				possible[b] = Answer.YES;
			}
		}
		for (int b = 0; b < possible.length; b++) {
			if (possible[b] == null) {
				stopIfAsked(listener);
				boolean[] fired = guessed(b, bench);
				for (int other = b; other < fired.length; other++) {
					possible[other] = possible[other] == null && fired[other] ? Answer.YES : possible[other];
				}
				if (possible[b] != null) {
					continue;
				}
				possible[b] = bench.ask(encoding.body(b));
				for (int other = b + 1; possible[b] == Answer.YES && other < possible.length; other++) {
					if (possible[other] == null && encoding.solver.holds(encoding.body(other))) {
						possible[other] = Answer.YES;
					}
				}
			}
		}
		return possible;
	}

	/** Returns what fires in a situation in which a branch does, if one is found without the solver; else nothing. */
	private boolean[] guessed(int branch, Bench bench) {
		Optional<int[]> guess = candidates.of(branch, bench.run().known());
		if (guess.isPresent()) {
			boolean[] fired = program.derive(guess.get(), -1).fired();
			if (fired[branch] && lawful.have(guess.get(), bench.run().known())) {
				return fired;
			}
		}
		return new boolean[0];
	}

	private Standing standing(int rule, Bench bench, Program.Derived derived, Answer[] possible) {
		List<Integer> fired = outcomes(rule, b -> derived.fired()[b]);
		List<Integer> yet = outcomes(rule, b -> !derived.fired()[b] && possible[b] == Answer.YES);
		boolean unsure = program.branchesOf.get(rule).stream().anyMatch(b -> possible[b] == Answer.UNDECIDED);
		String name = program.rules.get(rule).name();
		State state = !fired.isEmpty() ? State.FIRED : !yet.isEmpty() ? State.OPEN : unsure ? State.UNDECIDED : State.NEVER;
		boolean waits = state == State.OPEN || state == State.UNDECIDED;
		return new Standing(name, state, fired, state == State.OPEN ? yet : List.of(), hasBegun(rule, bench, derived),
				waits ? needs(rule, bench, derived) : List.of(),
				state == State.NEVER ? obstacle(rule, bench) : Obstacle.NONE);
	}

	private boolean hasBegun(int rule, Bench bench, Program.Derived derived) {
		return Demands.of(program.rules.get(rule)).stream()
				.map(demand -> builder.formula(program.rules.get(rule), demand.condition()))
				.anyMatch(formula -> shows(formula, bench.run().known(), derived.verdicts()));
	}

	/** Returns whether a formula holds because of something found or derived. */
	private boolean shows(Formula formula, int[] known, boolean[] stands) {
		if (formula instanceof Formula.Known lit) {
			return !(lit.var() >= 0 && program.isTrait(lit.var())) && Program.holds(lit, known, stands);
		} else if (formula instanceof Formula.Stands is) {
			return is.stands() && stands[is.verdict()];
		}
		List<Formula> parts = formula instanceof Formula.All all ? all.parts() : ((Formula.Any) formula).parts();
		return Program.holds(formula, known, stands) && parts.stream().anyMatch(part -> shows(part, known, stands));
	}

	private List<Integer> outcomes(int rule, IntPredicate wanted) {
		return program.branchesOf.get(rule).stream().filter(wanted::test).map(b -> program.branches.get(b).outcome())
				.toList();
	}

	// ---- what a rule asks for ----------------------------------------------------------------------------------

	private List<Need> needs(int rule, Bench bench, Program.Derived derived) {
		List<Need> needs = new ArrayList<>();
		for (Demand demand : Demands.of(program.rules.get(rule))) {
			Formula formula = builder.formula(program.rules.get(rule), demand.condition());
			if (!Program.holds(formula, bench.run().known(), derived.verdicts())) {
				Need need = new Need(demand, new TreeSet<>(), new TreeSet<>());
				collect(formula, bench.run().known(), derived.verdicts(), need);
				needs.add(need);
			}
		}
		return needs;
	}

	/** Collects what is open in a formula that does not hold; leaves out what cannot come to hold by what is open. */
	private boolean collect(Formula formula, int[] known, boolean[] stands, Need into) {
		if (formula instanceof Formula.Known lit) {
			boolean told = lit.var() < 0 || known[lit.var()] != Program.OPEN;
			if (told && (lit.var() < 0 || !program.meant(lit.var(), known[lit.var()]).meets(lit.cells()))) {
				return false;
			} else if (told && lit.cells().contains(known[lit.var()])) {
				return true;
			}
			return !lit.cells().isEmpty() && (into.open().add(program.variables.get(lit.var())) || true);
		} else if (formula instanceof Formula.Stands is) {
			if (stands[is.verdict()] != is.stands()) {
				into.verdicts().add(program.verdicts.get(is.verdict()));
			}
			return true;
		}
		boolean all = formula instanceof Formula.All;
		boolean can = all;
		Need gathered = new Need(into.demand(), new TreeSet<>(), new TreeSet<>());
		for (Formula part : all ? ((Formula.All) formula).parts() : ((Formula.Any) formula).parts()) {
			can = collect(part, known, stands, gathered) ? can || !all : can && !all;
		}
		if (can) {
			into.open().addAll(gathered.open());
			into.verdicts().addAll(gathered.verdicts());
		}
		return can;
	}

	private Obstacle obstacle(int rule, Bench bench) {
		List<Demand> demands = Demands.of(program.rules.get(rule));
		List<Integer> literals = demandLiterals.computeIfAbsent(rule, key -> demands.stream()
				.map(demand -> encoding.literal(builder.formula(program.rules.get(rule), demand.condition()), true))
				.toList());
		Optional<List<Integer>> core = Minimal.conflict(encoding.solver, bench.all(), literals);
		if (core.isEmpty()) {
			return Obstacle.NONE; // the limit was reached on the way to the reason
		}
		List<Demand> clashing = core.get().stream().map(literal -> demands.get(literals.indexOf(literal))).toList();
		return new Obstacle(clashing, bench.reason(core.get()).orElse(List.of()));
	}

	private List<Derived> verdicts(VehicleRun run) {
		List<Derived> all = new ArrayList<>();
		for (int verdict = 0; verdict < program.verdicts.size(); verdict++) {
			if (run.derived().verdicts()[verdict]) {
				all.add(new Derived(program.verdicts.get(verdict), run.behind(verdict)));
			}
		}
		return all;
	}
}
