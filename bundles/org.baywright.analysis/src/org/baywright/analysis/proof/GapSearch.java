package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.IndexSet;

/**
 * Finds the complete situations in which a sign is present and no rule confirms or refers, as a list of regions. Each
 * region is as wide as can be: whatever else it would take in, some situation there is not a gap.
 */
public final class GapSearch {

	/** So many regions of one sign are listed; that there are more is said. */
	private static final int MOST_REGIONS = 8;

	/**
	 * Regions found.
	 *
	 * @param regions regions, in the order in which they were found
	 * @param more whether there are gaps outside of all of them
	 */
	public record Found(List<Situation> regions, boolean more) {
	}

	private final Prover prover;
	private final Program program;
	private final SatSolver solver;
	private final Encoding encoding;
	private final Values values;
	private final int allKnown;
	private final int ended;

	public GapSearch(Prover prover) {
		this.prover = prover;
		program = prover.program();
		encoding = prover.encoding();
		solver = encoding.solver;
		values = encoding.values;
		allKnown = encoding.allKnown();
		ended = encoding.ended();
	}

	/** Returns the gaps of a sign. */
	public Found of(int sign) {
		int present = encoding.shows(sign);
		int fresh = 0;
		List<Situation> regions = new ArrayList<>();
		while (true) {
			List<Integer> question = new ArrayList<>(List.of(allKnown, present, -ended));
			if (fresh != 0) {
				question.add(fresh);
			}
			Answer answer = ask(question);
			if (answer == Answer.UNDECIDED) {
				prover.undecided("whether a job with " + program.variables.get(sign).name() + " can come to no end");
			}
			if (answer != Answer.YES || regions.size() == MOST_REGIONS) {
				return new Found(regions, answer == Answer.YES);
			}
			int[] cells = first(question, sign);
			Optional<List<Integer>> reason = Minimal.conflict(solver, List.of(allKnown, present, ended),
					exclusions(cells, sign));
			if (reason.isEmpty()) {
				prover.undecided("how wide a gap with " + program.variables.get(sign).name() + " is");
				return new Found(regions, true);
			}
			regions.add(region(sign, cells, reason.get()));
			fresh = fresh == 0 ? solver.newLiteral() : fresh;
			solver.add(without(reason.get(), fresh));
		}
	}

	private Answer ask(List<Integer> literals) {
		return solver.solve(literals.stream().mapToInt(Integer::intValue).toArray());
	}

	private static int[] without(List<Integer> region, int fresh) {
		int[] clause = new int[region.size() + 1];
		for (int i = 0; i < region.size(); i++) {
			clause[i] = -region.get(i);
		}
		clause[region.size()] = -fresh;
		return clause;
	}

	/** Returns the first gap in a fixed order, other signs absent where possible. */
	private int[] first(List<Integer> question, int sign) {
		List<Integer> fixed = new ArrayList<>(question);
		int[] cells = new int[program.variables.size()];
		for (int var : order()) {
			boolean backwards = program.variables.get(var).kind() == Variable.Kind.SIGN && var != sign;
			int count = program.cells.get(var).count();
			cells[var] = values.cell(var);
			boolean better = true;
			while (better) {
				IndexSet preferred = backwards ? IndexSet.range(cells[var] + 1, count - 1)
						: IndexSet.range(0, cells[var] - 1);
				better = !preferred.isEmpty() && ask(with(fixed, values.in(var, preferred))) == Answer.YES;
				if (better) {
					cells[var] = values.cell(var);
				}
			}
			fixed.add(values.in(var, Encoding.only(cells[var])));
			ask(fixed);
		}
		return cells;
	}

	private static List<Integer> with(List<Integer> literals, int literal) {
		List<Integer> all = new ArrayList<>(literals);
		all.add(literal);
		return all;
	}

	/** What technicians look at first stands first, so that regions rather speak of signs than of codes or traits. */
	private List<Integer> order() {
		List<Integer> order = new ArrayList<>();
		for (Variable.Kind kind : List.of(Variable.Kind.SIGN, Variable.Kind.TEST, Variable.Kind.MODULE,
				Variable.Kind.CODE, Variable.Kind.TRAIT)) {
			for (int var = 0; var < program.variables.size(); var++) {
				if (program.variables.get(var).kind() == kind) {
					order.add(var);
				}
			}
		}
		return order;
	}

	private List<Integer> exclusions(int[] cells, int sign) {
		List<Integer> all = new ArrayList<>();
		for (int var : order()) {
			if (var != sign) {
				List<Integer> own = values.exclusions(var, cells[var]);
				Collections.reverse(own); // the weakest first, so that they are preferred
				all.addAll(own);
			}
		}
		return all;
	}

	private Situation region(int sign, int[] cells, List<Integer> reason) {
		Map<Integer, IndexSet> left = new HashMap<>();
		left.put(sign, Encoding.only(Variable.PRESENT));
		for (int var = 0; var < cells.length; var++) {
			for (int literal : values.exclusions(var, cells[var])) {
				if (reason.contains(literal)) {
					left.merge(var, values.leaves(var, literal), IndexSet::intersect);
				}
			}
		}
		List<Situation.Fact> facts = new ArrayList<>();
		left.forEach((var, remaining) -> {
			Cells cut = program.cells.get(var);
			facts.add(new Situation.Fact(program.variables.get(var), cut.values(remaining), cut.example(cells[var])));
		});
		return new Situation(program.family, facts);
	}
}
