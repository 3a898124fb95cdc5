package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;

/**
 * How strong the evidence of a branch is: one for a test, and the strongest verdict it builds on on top of that. Signs
 * and codes alone have strength 0.
 */
final class Strength {

	/** Where many rules wait for each other in many ways, ways beyond these are left aside. */
	private static final int MOST_WAYS = 10_000;

	private final Program program;
	private final List<Set<Integer>> asked = new ArrayList<>();
	private final Map<Integer, Integer> known = new HashMap<>();
	private int ways;

	Strength(Program program) {
		this.program = program;
		program.branches.forEach(branch -> {
			Set<Integer> verdicts = new TreeSet<>();
			branch.body().eachLeaf(leaf -> {
				if (leaf instanceof Formula.Stands stands && stands.stands()) {
					verdicts.add(stands.verdict());
				}
			});
			asked.add(verdicts);
		});
	}

	int of(int branch) {
		Integer strength = known.get(branch);
		if (strength == null) {
			ways = 0;
			strength = of(branch, new HashSet<>());
			known.put(branch, strength);
		}
		return strength;
	}

	/** Where verdicts wait for each other, no branch counts twice on the way: going round adds nothing. */
	private int of(int branch, Set<Integer> behind) {
		int most = 0;
		behind.add(branch);
		for (int verdict : asked.get(branch)) {
			boolean loop = program.strata.isLoop(program.strata.groups().get(program.strata.groupOf(verdict)));
			for (int b : program.derivedBy.get(verdict)) {
				if (!loop) {
					int before = ways;
					most = Math.max(most, of(b));
					ways = before;
				} else if (!behind.contains(b) && ways++ < MOST_WAYS) {
					most = Math.max(most, of(b, behind));
				}
			}
		}
		behind.remove(branch);
		return most + (program.rules.get(program.branches.get(branch).rule()).test().isPresent() ? 1 : 0);
	}
}
