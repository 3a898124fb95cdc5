package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
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
import org.baywright.model.words.Words;

/**
 * Rules that say the same in the same situations, of which any but one could go. Dead rules are reported as dead; rules that only say
 * {@code proves nothing} are notes and may repeat.
 */
@RuleCheck(id = "duplicate-rule", severity = Severity.WARNING, summary = "Two rules mean the same thing")
public final class DuplicateRule implements ProofCheck<List<DuplicateRule.Alike>> {

	/** So many rules are named in the sentence; all of them have their place. */
	private static final int MOST_NAMES = 8;

	/**
	 * Rules that mean the same in one part.
	 *
	 * @param rules their names, sorted; at least two
	 * @param speak whether they ever say anything there; rules that never do have nothing to differ in
	 */
	record Alike(List<String> rules, boolean speak) {
	}

	@Override
	public List<Alike> examine(Prover prover) {
		Program program = prover.program();
		// what is written alike needs no proof, so that it is the rules written otherwise that are compared
		Map<Set<List<Integer>>, Map<String, List<Integer>>> bySayings = new LinkedHashMap<>();
		for (int rule = 0; rule < program.rules.size(); rule++) {
			if (program.branchesOf.get(rule).stream().anyMatch(b -> !program.branches.get(b).verdicts().isEmpty())) {
				Map<List<Integer>, List<Integer>> sayings = sayings(prover, rule);
				bySayings.computeIfAbsent(sayings.keySet(), key -> new LinkedHashMap<>())
						.computeIfAbsent(written(program, sayings), key -> new ArrayList<>()).add(rule);
			}
		}
		List<Alike> found = new ArrayList<>();
		for (Map<String, List<Integer>> byText : bySayings.values()) {
			for (List<Integer> alike : alike(prover, byText.values())) {
				List<Integer> idle = alike.size() < 2 ? List.of() : alike.stream().filter(rule -> canGo(prover, rule)).toList();
				if (idle.size() > 1) {
					found.add(new Alike(idle.stream().map(rule -> program.rules.get(rule).name()).sorted().toList(),
							!sayings(prover, idle.get(0)).isEmpty()));
				}
			}
		}
		return found;
	}

	/** Joins groups of rules that are written alike to groups of rules that mean the same. */
	private static List<List<Integer>> alike(Prover prover, Collection<List<Integer>> groups) {
		List<List<Integer>> joined = new ArrayList<>();
		for (List<Integer> group : groups) {
			joined.stream().filter(other -> areTwins(prover, other.get(0), group.get(0))).findFirst().orElseGet(() -> {
				joined.add(new ArrayList<>());
				return joined.get(joined.size() - 1);
			}).addAll(group);
		}
		return joined;
	}

	private static String written(Program program, Map<List<Integer>, List<Integer>> sayings) {
		return sayings.entrySet().stream()
				.map(saying -> saying.getKey() + ": " + saying.getValue().stream().map(b -> program.branches.get(b).body().written()).sorted().toList())
				.sorted().toList().toString();
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
	public List<Alike> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		everywhere(checked).forEach(rules -> report(checked,
				rules.stream().map(rule -> checked.base().rule(rule).orElseThrow()).sorted(Comparator.comparing(Rule::span)).toList()));
	}

	/** Returns the names, sorted, of rules that mean the same in every part that has one of them, and speak in some. */
	static Collection<List<String>> everywhere(Checked checked) {
		Map<String, Map<Component, String>> firstByRule = new TreeMap<>();
		Set<String> speaking = new HashSet<>();
		checked.each(Checks.get(DuplicateRule.class), (part, found) -> found.forEach(alike -> alike.rules().forEach(rule -> {
			firstByRule.computeIfAbsent(rule, key -> new HashMap<>()).put(part, alike.rules().get(0));
			if (alike.speak()) {
				speaking.add(rule);
			}
		})));
		Map<Map<Component, String>, List<String>> together = new LinkedHashMap<>();
		firstByRule.forEach((rule, byPart) -> {
			if (speaking.contains(rule) && byPart.keySet().containsAll(checked.partsOf(rule))) {
				together.computeIfAbsent(byPart, key -> new ArrayList<>()).add(rule);
			}
		});
		return together.values().stream().filter(rules -> rules.size() > 1).toList();
	}

	/** @param rules in the order of the text */
	private void report(Checked checked, List<Rule> rules) {
		Rule first = rules.get(0);
		List<Rule> later = rules.subList(1, rules.size());
		List<String> names = new ArrayList<>(later.stream().limit(MOST_NAMES).map(Rule::name).toList());
		if (later.size() > MOST_NAMES) {
			names.add((later.size() - MOST_NAMES) + " more");
		}
		boolean one = later.size() == 1;
		Checked.Draftsman flaw = checked
				.flaw(this, String.join("/", rules.stream().map(Rule::name).sorted().toList()), later.get(0).span())
				.says((one ? "Rule " : "Rules ") + Words.and(names) + (one ? " means" : " mean") + " the same as rule "
						+ first.name() + "; keep one of them.")
				.about(first).near(first.span(), "rule " + first.name());
		for (Rule rule : later) {
			flaw.about(rule).fix(new Fix.RemoveRule(one ? "Remove the rule" : "Remove rule " + rule.name(), rule.name()));
			if (rule != later.get(0)) {
				flaw.near(rule.span(), "rule " + rule.name());
			}
		}
		flaw.add();
	}
}
