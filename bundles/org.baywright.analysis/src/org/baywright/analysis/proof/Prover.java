package org.baywright.analysis.proof;

import org.baywright.analysis.Situation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;

import org.baywright.analysis.sat.Answer;
import org.baywright.model.RuleBase;

/**
 * Answers the questions of the checks about one program, cheapest way first: the index, a guessed situation that the
 * derivation confirms, the solver.
 */
public final class Prover {

	/** How far a search may go. Counted in conflicts, not in time, so that answers can be repeated. */
	public static final int CONFLICT_LIMIT = 200_000;

	private final RuleBase base;
	private final Program program;
	private final int conflictLimit;
	private final Needs needs;
	private final Candidates candidates;
	private final int[][] shown;
	private final Program.Derived[] derived;
	private final Answer[] live;
	private final Map<List<Integer>, Answer> together = new HashMap<>();
	private int[] firstWritten;
	private final TreeSet<String> undecided = new TreeSet<>();
	private Encoding encoding;
	private Encoding switchable;
	private Witnesses witnesses;
	private Reasons reasons;
	private Boolean possible;

	public Prover(RuleBase base, Program program, int conflictLimit) {
		this.base = base;
		this.program = program;
		this.conflictLimit = conflictLimit;
		needs = new Needs(program);
		candidates = new Candidates(program);
		shown = new int[program.branches.size()][];
		derived = new Program.Derived[program.branches.size()];
		live = new Answer[program.branches.size()];
	}

	public RuleBase base() {
		return base;
	}

	public Program program() {
		return program;
	}

	public Encoding encoding() {
		if (encoding == null) {
			encoding = new Encoding(program, conflictLimit, false);
		}
		return encoding;
	}

	/** Returns an encoding in which rules can be switched off. */
	public Encoding switchable() {
		if (switchable == null) {
			switchable = new Encoding(program, conflictLimit, true);
		}
		return switchable;
	}

	private Witnesses witnesses() {
		if (witnesses == null) {
			witnesses = new Witnesses(encoding());
		}
		return witnesses;
	}

	public Reasons reasons() {
		if (reasons == null) {
			reasons = new Reasons(program, conflictLimit);
		}
		return reasons;
	}

	/** Returns whether any vehicle obeys the laws. */
	public boolean isPossible() {
		if (possible == null) {
			possible = program.lawFormulas.isEmpty() || encoding().ask() != Answer.NO;
		}
		return possible;
	}

	/** Notes a question that a limit left open. */
	public void undecided(String question) {
		undecided.add(question);
	}

	public List<String> undecidedQuestions() {
		return List.copyOf(undecided);
	}

	/** Returns whether some situation fires the branch. */
	public Answer live(int branch) {
		if (live[branch] == null) {
			live[branch] = prove(branch);
			if (live[branch] == Answer.UNDECIDED) {
				undecided("whether " + say(branch) + " can ever apply");
			}
		}
		return live[branch];
	}

	private Answer prove(int branch) {
		if (needs.of(branch).isEmpty()) {
			return Answer.NO;
		}
		Optional<int[]> guess = candidates.of(branch);
		if (guess.isPresent() && isAllowed(guess.get()) && program.derive(guess.get(), -1).fired()[branch]) {
			shown[branch] = guess.get();
			return Answer.YES;
		}
		Answer answer = encoding().ask(encoding().body(branch));
		if (answer == Answer.YES) {
			shown[branch] = encoding().knownCells();
		}
		return answer;
	}

	/** Returns the known cells of a situation that fires the branch, if it is live. */
	public Optional<int[]> shown(int branch) {
		return live(branch) == Answer.YES ? Optional.of(shown[branch]) : Optional.empty();
	}

	/** Returns what the rules derive in the situation of {@link #shown}, if the branch is live. */
	public Optional<Program.Derived> derivedWhenShown(int branch) {
		if (derived[branch] == null) {
			shown(branch).ifPresent(known -> derived[branch] = program.derive(known, -1));
		}
		return Optional.ofNullable(derived[branch]);
	}

	private boolean isAllowed(int[] known) {
		if (program.lawFormulas.isEmpty()) {
			return true;
		}
		List<Integer> assumptions = new ArrayList<>();
		for (int var = 0; var < known.length; var++) {
			if (known[var] != Program.OPEN) {
				assumptions.add(encoding().values.in(var, Encoding.only(known[var])));
			}
		}
		return encoding().ask(assumptions.stream().mapToInt(Integer::intValue).toArray()) == Answer.YES;
	}

	/** Returns whether a situation exists in which all branches fire. */
	public Answer together(int... branches) {
		for (int i = 0; i < branches.length; i++) {
			for (int j = i + 1; j < branches.length; j++) {
				if (needs.exclude(branches[i], branches[j])) {
					return Answer.NO;
				}
			}
		}
		// rules that are written alike have one answer
		Answer answer = together.computeIfAbsent(Arrays.stream(branches).map(this::writtenAs).distinct().sorted().boxed().toList(),
				key -> encoding().ask(bodies(branches)));
		if (answer == Answer.UNDECIDED) {
			undecided("whether " + String.join(" and ", Arrays.stream(branches).mapToObj(this::say).toList())
					+ " can apply together");
		}
		return answer;
	}

	/** Returns the first branch whose conditions are written as those of this one. */
	private int writtenAs(int branch) {
		if (firstWritten == null) {
			Map<String, Integer> first = new HashMap<>();
			firstWritten = IntStream.range(0, program.branches.size())
					.map(b -> first.merge(program.branches.get(b).body().written(), b, (old, now) -> old)).toArray();
		}
		return firstWritten[branch];
	}

	private int[] bodies(int... branches) {
		return Arrays.stream(branches).map(encoding()::body).toArray();
	}

	/**
	 * Returns the smallest situation in which all branches fire and, if there are any ways, all literals of one of them
	 * hold.
	 */
	public Optional<Situation> smallest(List<int[]> ways, int... branches) {
		int[] goals = bodies(branches);
		if (!ways.isEmpty()) {
			goals = Arrays.copyOf(goals, goals.length + 1);
			goals[branches.length] = encoding().anyWay(ways);
		}
		return witnesses().smallest(goals);
	}

	/** Returns the smallest situation with all of these literals of {@link #encoding()}. */
	public Optional<Situation> smallestWith(int... literals) {
		return witnesses().smallest(literals);
	}

	public String ruleName(int branch) {
		return program.rules.get(program.branches.get(branch).rule()).name();
	}

	public String say(int branch) {
		return "rule " + ruleName(branch) + " (outcome "
				+ program.rules.get(program.branches.get(branch).rule()).outcomes()
						.get(program.branches.get(branch).outcome()).label()
				+ ")";
	}
}
