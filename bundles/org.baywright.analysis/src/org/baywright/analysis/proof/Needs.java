package org.baywright.analysis.proof;

import org.baywright.analysis.Variable;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.IndexSet;

/**
 * What a branch cannot do without, as an index: for some variables the cells one of which must be known. Two branches
 * whose needs exclude each other never fire together, and no solver has to be asked.
 */
public final class Needs {

	private final Program program;
	private final Map<Integer, Optional<Map<Integer, IndexSet>>> ofBranch = new HashMap<>();
	private final boolean[] busy;

	public Needs(Program program) {
		this.program = program;
		busy = new boolean[program.branches.size()];
	}

	/** Returns the needs by variable; empty if they already exclude each other, so that the branch never fires. */
	public Optional<Map<Integer, IndexSet>> of(int branch) {
		Optional<Map<Integer, IndexSet>> known = ofBranch.get(branch);
		if (known != null) {
			return known;
		}
		if (busy[branch]) {
			return Optional.of(Map.of()); // a loop adds no need
		}
		busy[branch] = true;
		Optional<Map<Integer, IndexSet>> needs = of(program.branches.get(branch).body());
		busy[branch] = false;
		ofBranch.put(branch, needs);
		return needs;
	}

	/** Returns whether the index alone shows that the two branches never fire in the same situation. */
	public boolean exclude(int a, int b) {
		Optional<Map<Integer, IndexSet>> left = of(a);
		Optional<Map<Integer, IndexSet>> right = of(b);
		if (left.isEmpty() || right.isEmpty()) {
			return true;
		}
		for (Map.Entry<Integer, IndexSet> need : left.get().entrySet()) {
			IndexSet other = right.get().get(need.getKey());
			if (other != null && !other.meets(need.getValue())) {
				return true;
			}
		}
		return false;
	}

	private Optional<Map<Integer, IndexSet>> of(Formula formula) {
		if (formula instanceof Formula.Known lit) {
			return known(lit);
		} else if (formula instanceof Formula.Stands stands) {
			return stands.stands() ? anyBranch(program.derivedBy.get(stands.verdict())) : Optional.of(Map.of());
		} else if (formula instanceof Formula.All all) {
			Optional<Map<Integer, IndexSet>> needs = Optional.of(Map.of());
			for (Formula part : all.parts()) {
				Optional<Map<Integer, IndexSet>> more = of(part);
				if (needs.isEmpty() || more.isEmpty()) {
					return Optional.empty();
				}
				needs = meet(needs.get(), more.get());
			}
			return needs;
		}
		Optional<Map<Integer, IndexSet>> needs = Optional.empty();
		for (Formula part : ((Formula.Any) formula).parts()) {
			needs = either(needs, of(part));
		}
		return needs;
	}

	private Optional<Map<Integer, IndexSet>> known(Formula.Known lit) {
		if (lit.var() < 0 || lit.cells().isEmpty()) {
			return Optional.empty();
		}
		int module = program.moduleOf[lit.var()];
		if (module < 0) {
			return Optional.of(Map.of(lit.var(), lit.cells()));
		}
		boolean canBeSilent = lit.cells().contains(Variable.UNREAD);
		boolean canAnswer = !lit.cells().equals(Encoding.only(Variable.UNREAD));
		return Optional.of(Map.of(lit.var(), lit.cells(), module, IndexSet
				.range(canAnswer ? Variable.ANSWERS : Variable.SILENT, canBeSilent ? Variable.SILENT : Variable.ANSWERS)));
	}

	private Optional<Map<Integer, IndexSet>> anyBranch(Iterable<Integer> branches) {
		Optional<Map<Integer, IndexSet>> needs = Optional.empty();
		for (int b : branches) {
			needs = either(needs, of(b));
		}
		return needs;
	}

	private static Optional<Map<Integer, IndexSet>> either(Optional<Map<Integer, IndexSet>> a,
			Optional<Map<Integer, IndexSet>> b) {
		if (a.isEmpty() || b.isEmpty()) {
			return a.isEmpty() ? b : a;
		}
		Map<Integer, IndexSet> both = new HashMap<>();
		a.get().forEach((var, cells) -> {
			IndexSet other = b.get().get(var);
			if (other != null) {
				both.put(var, cells.union(other));
			}
		});
		return Optional.of(both);
	}

	private static Optional<Map<Integer, IndexSet>> meet(Map<Integer, IndexSet> a, Map<Integer, IndexSet> b) {
		if (a.isEmpty() || b.isEmpty()) {
			return Optional.of(a.isEmpty() ? b : a);
		}
		Map<Integer, IndexSet> met = new HashMap<>(a);
		for (Map.Entry<Integer, IndexSet> need : b.entrySet()) {
			IndexSet cells = met.merge(need.getKey(), need.getValue(), IndexSet::intersect);
			if (cells.isEmpty()) {
				return Optional.empty();
			}
		}
		return Optional.of(met);
	}
}
