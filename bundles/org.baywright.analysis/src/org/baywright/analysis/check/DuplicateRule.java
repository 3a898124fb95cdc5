package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Branch;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Rule;
import org.baywright.model.Severity;

/**
 * Two rules that say the same in the same situations, of which either could go. Dead rules are reported as dead; rules that only say
 * {@code proves nothing} are notes and may repeat.
 */
@RuleCheck(id = "duplicate-rule", severity = Severity.WARNING, summary = "Two rules mean the same")
public final class DuplicateRule implements ProofCheck<List<DuplicateRule.Twins>> {

	/**
	 * Two rules that mean the same in one part; the first name stands before the second.
	 *
	 * @param speak whether they ever say anything there; rules that never do have nothing to differ in
	 */
	record Twins(String first, String second, boolean speak) {
	}

	@Override
	public List<Twins> examine(Prover prover) {
		Program program = prover.program();
		Map<Set<List<Integer>>, List<Integer>> bySayings = new LinkedHashMap<>();
		for (int rule = 0; rule < program.rules.size(); rule++) {
			Map<List<Integer>, List<Integer>> sayings = sayings(prover, rule);
			if (program.branchesOf.get(rule).stream().anyMatch(b -> !program.branches.get(b).verdicts().isEmpty())) {
				bySayings.computeIfAbsent(sayings.keySet(), key -> new ArrayList<>()).add(rule);
			}
		}
		List<Twins> found = new ArrayList<>();
		for (List<Integer> alike : bySayings.values()) {
			for (int i = 0; i < alike.size(); i++) {
				for (int j = i + 1; j < alike.size(); j++) {
					if (areTwins(prover, alike.get(i), alike.get(j)) && canGo(prover, alike.get(i))
							&& canGo(prover, alike.get(j))) {
						found.add(new Twins(program.rules.get(alike.get(i)).name(),
								program.rules.get(alike.get(j)).name(), !sayings(prover, alike.get(i)).isEmpty()));
					}
				}
			}
		}
		return found;
	}

	/** A rule that another only repeats may always fire with it and still be the one that is needed. */
	private static boolean canGo(Prover prover, int rule) {
		return sayings(prover, rule).isEmpty() || RedundantRule.isRedundant(prover, rule);
	}

	/** Returns the live branches of a rule by what they say. */
	private static Map<List<Integer>, List<Integer>> sayings(Prover prover, int rule) {
		Map<List<Integer>, List<Integer>> sayings = new TreeMap<>((a, b) -> a.toString().compareTo(b.toString()));
		for (int b : prover.program().branchesOf.get(rule)) {
			Branch branch = prover.program().branches.get(b);
			if (!branch.verdicts().isEmpty() && prover.live(b) != Answer.NO) {
				sayings.computeIfAbsent(branch.verdicts(), key -> new ArrayList<>()).add(b);
			}
		}
		return new HashMap<>(sayings);
	}

	private static boolean areTwins(Prover prover, int first, int second) {
		Map<List<Integer>, List<Integer>> left = sayings(prover, first);
		Map<List<Integer>, List<Integer>> right = sayings(prover, second);
		for (Map.Entry<List<Integer>, List<Integer>> saying : left.entrySet()) {
			if (differInShown(prover, saying.getValue(), right.get(saying.getKey()))
					|| differInShown(prover, right.get(saying.getKey()), saying.getValue())) {
				return false;
			}
		}
		for (Map.Entry<List<Integer>, List<Integer>> saying : left.entrySet()) {
			List<Integer> others = right.get(saying.getKey());
			if (!alwaysWith(prover, saying.getValue(), others) || !alwaysWith(prover, others, saying.getValue())) {
				return false;
			}
		}
		return true;
	}

	/** Returns whether a situation that fires one of the branches is already known in which none of the others fires. */
	private static boolean differInShown(Prover prover, List<Integer> branches, List<Integer> others) {
		for (int b : branches) {
			Optional<Program.Derived> derived = prover.derivedWhenShown(b);
			if (derived.isPresent() && others.stream().noneMatch(other -> derived.get().fired()[other])) {
				return true;
			}
		}
		return false;
	}

	private static boolean alwaysWith(Prover prover, List<Integer> branches, List<Integer> others) {
		Encoding encoding = prover.encoding();
		for (int b : branches) {
			int[] question = new int[others.size() + 1];
			question[0] = encoding.body(b);
			for (int i = 0; i < others.size(); i++) {
				question[i + 1] = -encoding.body(others.get(i));
			}
			Answer answer = encoding.ask(question);
			if (answer == Answer.UNDECIDED) {
				prover.undecided("whether " + prover.say(b) + " and " + prover.say(others.get(0)) + " mean the same");
			}
			if (answer != Answer.NO) {
				return false;
			}
		}
		return true;
	}

	@Override
	public List<Twins> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		everywhere(checked).forEach(pair -> report(checked, checked.base().rule(pair.get(0)).orElseThrow(),
				checked.base().rule(pair.get(1)).orElseThrow()));
	}

	/** Returns the names of the pairs that mean the same in every part that has one of them, and speak in some. */
	static Set<List<String>> everywhere(Checked checked) {
		Map<List<String>, Map<Component, Boolean>> speaks = new LinkedHashMap<>();
		checked.each(Checks.get(DuplicateRule.class), (part, twins) -> twins.forEach(pair -> speaks
				.computeIfAbsent(List.of(pair.first(), pair.second()), key -> new HashMap<>()).put(part, pair.speak())));
		speaks.entrySet().removeIf(pair -> !pair.getValue().containsValue(true)
				|| !pair.getKey().stream().allMatch(rule -> pair.getValue().keySet().containsAll(checked.partsOf(rule))));
		return speaks.keySet();
	}

	private void report(Checked checked, Rule a, Rule b) {
		boolean inOrder = a.span().compareTo(b.span()) <= 0;
		Rule earlier = inOrder ? a : b;
		Rule later = inOrder ? b : a;
		checked.finding(this, a.name() + "/" + b.name(), later.span())
				.says("Rule " + later.name() + " means the same as rule " + earlier.name() + "; keep one of them.")
				.about(a).about(b)
				.near(earlier.span(), "rule " + earlier.name())
				.fix(new Fix.RemoveRule("Remove the rule", later.name())).add();
	}
}
