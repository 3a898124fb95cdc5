package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.proof.Checked;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;

/**
 * The tests without which a verdict cannot stand: those that every rule which states it runs or waits for. A test that is seen
 * with another counts as that one.
 */
final class Behind {

	private record Said(String fault, VerdictKind verdict) {
	}

	private final RuleBase base;
	private final Set<String> watched;
	private final Map<Said, Set<String>> verdicts = new HashMap<>();
	private final HeldBack heldBack;

	/**
	 * Begins with all tests and takes away until nothing changes, so that rules in a circle count on each other.
	 *
	 * @param watched the tests that are looked at
	 */
	Behind(Checked checked, Set<String> watched) {
		base = checked.base();
		this.watched = watched;
		heldBack = HeldBack.in(checked);
		Map<Said, List<Rule>> stating = new HashMap<>();
		for (Rule rule : watched.isEmpty() ? List.<Rule>of() : base.rules()) {
			rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream()).forEach(said -> {
				if (said instanceof Conclusion.OnFault on) {
					stating.computeIfAbsent(new Said(on.fault(), on.verdict()), key -> new ArrayList<>()).add(rule);
				}
			});
		}
		stating.keySet().forEach(said -> verdicts.put(said, watched));
		boolean more = true;
		while (more) {
			more = false;
			for (Map.Entry<Said, List<Rule>> entry : stating.entrySet()) {
				Set<String> now = new TreeSet<>(verdicts.get(entry.getKey()));
				for (Rule rule : entry.getValue()) {
					Set<String> taken = all(rule.given());
					rule.test().map(this::doneBy).ifPresent(taken::add);
					now.retainAll(taken);
				}
				more |= !now.equals(verdicts.put(entry.getKey(), now));
			}
		}
	}

	private String doneBy(String test) {
		return base.test(test).map(base::doneBy).map(Test::name).orElse(test);
	}

	/** Returns the tests without which not all conditions can hold. */
	Set<String> all(List<Condition> conditions) {
		Set<String> all = new TreeSet<>();
		conditions.forEach(condition -> all.addAll(needed(condition, true)));
		return all;
	}

	/** Returns the tests without which the condition cannot hold or, with {@code holds} false, cannot fail. */
	private Set<String> needed(Condition condition, boolean holds) {
		return condition.match(
				(Condition.And and) -> needed(and.parts(), holds, holds),
				(Condition.Or or) -> needed(or.parts(), holds, !holds),
				(Condition.Not not) -> needed(not.part(), !holds),
				(Condition.Atom atom) -> atom.match(
						(Condition.TraitIs is) -> Set.of(),
						(Condition.SignIs is) -> Set.of(),
						(Condition.TestIs is) -> watched.contains(doneBy(is.test())) ? Set.of(doneBy(is.test())) : Set.of(),
						(Condition.CodeIs is) -> Set.of(),
						(Condition.ModuleIs is) -> Set.of(),
						// a rule that is left out may state it without any test
						(Condition.VerdictIs is) -> is.stands() != holds || heldBack.decides(is.fault()) ? Set.of()
								: verdicts.getOrDefault(new Said(is.fault(), is.verdict()), Set.of()),
						(Condition.Unexplained is) -> Set.of()));
	}

	private Set<String> needed(List<Condition> parts, boolean hold, boolean all) {
		Set<String> found = new TreeSet<>();
		for (int i = 0; i < parts.size(); i++) {
			Set<String> part = needed(parts.get(i), hold);
			if (i == 0 || all) {
				found.addAll(part);
			} else {
				found.retainAll(part);
			}
		}
		return found;
	}
}
