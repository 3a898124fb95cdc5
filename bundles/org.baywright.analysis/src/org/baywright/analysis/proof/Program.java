package org.baywright.analysis.proof;

import org.baywright.analysis.Verdict;
import org.baywright.analysis.Variable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;

/**
 * Rules and laws of one family that belong together, made ready for proofs: variables, verdicts and lines are numbered,
 * values are cut into cells. Derivation here is the least fixpoint, stratum by stratum.
 */
public final class Program {

	/** Number of a law that another part of the family obeys. */
	public static final int ELSEWHERE = -1;

	/** Number of the line of a condition that is not told by lines. */
	public static final int NO_LINE = -1;

	/** Value of a variable that is not known. */
	public static final int OPEN = -1;

	/**
	 * A law in the form {@code not when, or then}, about the vehicle itself, known or not.
	 *
	 * @param formula what always holds
	 * @param number its number in {@link #laws}, or {@link #ELSEWHERE}
	 * @param line number of the source line that stands for all of it
	 */
	public record LawFormula(Formula formula, int number, int line) {
	}

	public final String family;
	public final List<Rule> rules;
	public final List<Law> laws;
	public final List<List<String>> exclusives;
	public final List<Variable> variables;
	public final List<Optional<Domain>> domains;
	public final List<Cells> cells;
	public final List<Verdict> verdicts;
	public final List<Branch> branches;
	public final List<LawFormula> lawFormulas;
	public final List<SourceLine> lines;
	/** Conditions on traits under which some other part of the family always ends in a verdict. */
	public final List<Formula> unquiet;
	/** For each verdict the branches that derive it. */
	public final List<List<Integer>> derivedBy;
	/** For each rule its branches. */
	public final List<List<Integer>> branchesOf;
	/** For each code variable its module's variable; -1 for others. */
	public final int[] moduleOf;
	/** For each variable what must hold of a vehicle so that it makes sense on it. */
	public final List<Formula> limitOf;
	/** For each verdict the repairs of its fault, by name, with what must hold of a vehicle so that one is meant for it. */
	public final List<Map<String, Formula>> mendOf;
	public final Strata strata;
	private final Map<Variable, Integer> numbers;
	private final Map<Verdict, Integer> verdictNumbers;

	public Program(ProgramBuilder from) {
		family = from.family;
		rules = from.rules;
		laws = from.laws;
		exclusives = from.exclusives;
		variables = List.copyOf(from.variables);
		domains = List.copyOf(from.domains);
		cells = List.copyOf(from.cells);
		verdicts = List.copyOf(from.verdicts);
		branches = List.copyOf(from.branches);
		lawFormulas = List.copyOf(from.lawFormulas);
		lines = List.copyOf(from.lines);
		unquiet = List.copyOf(from.unquiet);
		numbers = from.numbers;
		verdictNumbers = from.verdictNumbers;
		derivedBy = new ArrayList<>();
		branchesOf = new ArrayList<>();
		verdicts.forEach(verdict -> derivedBy.add(new ArrayList<>()));
		rules.forEach(rule -> branchesOf.add(new ArrayList<>()));
		for (int b = 0; b < branches.size(); b++) {
			branchesOf.get(branches.get(b).rule()).add(b);
			for (int verdict : branches.get(b).verdicts()) {
				derivedBy.get(verdict).add(b);
			}
		}
		moduleOf = from.moduleOf();
		mendOf = verdicts.stream().map(from::mend).toList();
		limitOf = variables.stream().map(from::limit).toList();
		strata = new Strata(looksAt());
	}

	private List<List<Strata.Edge>> looksAt() {
		List<List<Strata.Edge>> edges = new ArrayList<>();
		for (List<Integer> deriving : derivedBy) {
			List<Strata.Edge> out = new ArrayList<>();
			for (int b : deriving) {
				branches.get(b).body().eachLeaf(leaf -> {
					if (leaf instanceof Formula.Stands stands) {
						out.add(new Strata.Edge(stands.verdict(), !stands.stands()));
					}
				});
			}
			edges.add(out);
		}
		return edges;
	}

	/** Returns the number of a variable, or -1. */
	public int numberOf(Variable variable) {
		return numbers.getOrDefault(variable, -1);
	}

	/** Returns the number of a verdict, or -1. */
	public int numberOf(Verdict verdict) {
		return verdictNumbers.getOrDefault(verdict, -1);
	}

	public boolean confirms(int verdict) {
		return verdicts.get(verdict).kind() == VerdictKind.CONFIRMED;
	}

	/** Returns whether some rule, and not only a law, looks at the variable. */
	public boolean isAsked(int var) {
		return branches.stream().anyMatch(branch -> mentions(branch.body(), var));
	}

	private static boolean mentions(Formula formula, int var) {
		if (formula instanceof Formula.Known known) {
			return known.var() == var;
		}
		List<Formula> parts = formula instanceof Formula.All all ? all.parts()
				: formula instanceof Formula.Any any ? any.parts() : List.of();
		return parts.stream().anyMatch(part -> mentions(part, var));
	}

	/** Returns whether some rule or law asks for the state of a code. */
	boolean hasStates(int var) {
		return moduleOf[var] >= 0 && cells.get(var).count() > Variable.FIRST_STATE;
	}

	/** Returns the cells in one of which a vehicle is with this reading: of a present code any of its states. */
	IndexSet meant(int var, int cell) {
		return cell == Variable.PRESENT && hasStates(var) ? CodeValues.PRESENT_STATES : Encoding.only(cell);
	}

	public boolean isTrait(int var) {
		return variables.get(var).kind() == Variable.Kind.TRAIT;
	}

	/** Returns whether no verdict depends on its own absence. */
	public boolean isStratified() {
		return strata.circles().isEmpty();
	}

	/** What the rules derive from a situation. */
	public record Derived(boolean[] verdicts, boolean[] fired) {
	}

	/**
	 * Derives all verdicts.
	 *
	 * @param known cell of each variable, or {@link #OPEN}
	 * @param without a rule to leave out, or -1
	 */
	public Derived derive(int[] known, int without) {
		boolean[] stands = new boolean[verdicts.size()];
		for (int[] group : strata.groups()) {
			boolean changed = true;
			while (changed) {
				changed = false;
				for (int verdict : group) {
					if (!stands[verdict] && isDerived(verdict, known, stands, without)) {
						stands[verdict] = true;
						changed = strata.isLoop(group);
					}
				}
			}
		}
		boolean[] fired = new boolean[branches.size()];
		for (int b = 0; b < fired.length; b++) {
			fired[b] = branches.get(b).rule() != without && holds(branches.get(b).body(), known, stands);
		}
		return new Derived(stands, fired);
	}

	/** Returns the verdicts that stand, sorted. */
	public List<Verdict> standing(Derived derived) {
		List<Verdict> standing = new ArrayList<>();
		for (int verdict = 0; verdict < verdicts.size(); verdict++) {
			if (derived.verdicts()[verdict]) {
				standing.add(verdicts.get(verdict));
			}
		}
		return standing;
	}

	private boolean isDerived(int verdict, int[] known, boolean[] stands, int without) {
		for (int b : derivedBy.get(verdict)) {
			if (branches.get(b).rule() != without && holds(branches.get(b).body(), known, stands)) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether a formula holds. */
	public static boolean holds(Formula formula, int[] known, boolean[] stands) {
		if (formula instanceof Formula.Known lit) {
			return lit.var() >= 0 && known[lit.var()] != OPEN && lit.cells().contains(known[lit.var()]);
		} else if (formula instanceof Formula.Stands verdict) {
			return stands[verdict.verdict()] == verdict.stands();
		} else if (formula instanceof Formula.All all) {
			for (Formula part : all.parts()) {
				if (!holds(part, known, stands)) {
					return false;
				}
			}
			return true;
		}
		for (Formula part : ((Formula.Any) formula).parts()) {
			if (holds(part, known, stands)) {
				return true;
			}
		}
		return false;
	}
}
