package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Place;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Branch;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * A rule that other rules shadow: without it every verdict in every situation would be the same. A rule that says
 * nothing at all (only {@code proves nothing}) is a note of the author and is left alone; a dead rule is reported as
 * dead; a rule that points to a fault by evidence of its own corroborates, and is worth having.
 */
@RuleCheck(id = "redundant-rule", severity = Severity.WARNING, summary = "Other rules say all that this rule says, whenever it applies")
public final class RedundantRule implements ProofCheck<List<RedundantRule.Redundant>> {

	/**
	 * A redundant rule.
	 *
	 * @param rule its name
	 * @param silent whether it is redundant only because nothing that says something can fire in this part
	 * @param coveredBy the smallest set of rules that already say what it says; none if it says only what it waits for
	 */
	record Redundant(String rule, boolean silent, List<String> coveredBy) {
	}

	@Override
	public List<Redundant> examine(Prover prover) {
		List<Redundant> found = new ArrayList<>();
		for (int rule = 0; rule < prover.program().rules.size(); rule++) {
			String name = prover.program().rules.get(rule).name();
			List<Integer> says = prover.program().branchesOf.get(rule).stream()
					.filter(b -> !prover.program().branches.get(b).verdicts().isEmpty()).toList();
			if (!says.isEmpty() && says.stream().allMatch(b -> prover.live(b) == Answer.NO)) {
				found.add(new Redundant(name, true, List.of()));
			} else if (isRedundant(prover, rule)) {
				found.add(new Redundant(name, false, cover(prover, rule)));
			}
		}
		return found;
	}

	/** Returns whether nothing changes without the rule, though it fires and says something. */
	static boolean isRedundant(Prover prover, int rule) {
		Program program = prover.program();
		boolean says = false;
		List<Integer> live = new ArrayList<>();
		for (int b : program.branchesOf.get(rule)) {
			if (!program.branches.get(b).verdicts().isEmpty() && prover.live(b) != Answer.NO) {
				live.add(b);
				says = true;
				if (isNeededIn(prover, b)) {
					return false;
				}
			}
		}
		for (int b : live) {
			for (int verdict : program.branches.get(b).verdicts()) {
				Encoding encoding = prover.switchable();
				Answer answer = encoding.askWithout(rule, encoding.body(b), -encoding.verdict(verdict));
				if (answer == Answer.UNDECIDED) {
					prover.undecided("whether rule " + program.rules.get(rule).name() + " is needed");
				}
				if (answer != Answer.NO) {
					return false;
				}
			}
		}
		return says;
	}

	/** The situation that showed the branch live mostly shows already that nothing else says the same. */
	private static boolean isNeededIn(Prover prover, int branch) {
		Program program = prover.program();
		Branch own = program.branches.get(branch);
		Optional<int[]> shown = prover.shown(branch);
		if (shown.isEmpty()) {
			return false;
		}
		Program.Derived without = program.derive(shown.get(), own.rule());
		return Program.holds(own.body(), shown.get(), without.verdicts())
				&& own.verdicts().stream().anyMatch(verdict -> !without.verdicts()[verdict]);
	}

	/** One set of rules for all that the rule says, so that each of them is needed. */
	private static List<String> cover(Prover prover, int rule) {
		Program program = prover.program();
		Encoding encoding = prover.switchable();
		List<int[]> ways = new ArrayList<>();
		for (int b : program.branchesOf.get(rule)) {
			for (int verdict : program.branches.get(b).verdicts()) {
				if (prover.live(b) == Answer.YES) {
					ways.add(new int[] { encoding.body(b), -encoding.verdict(verdict) });
				}
			}
		}
		return encoding.rulesBehind(rule, ways).orElse(List.of()).stream().map(other -> program.rules.get(other).name())
				.sorted().toList();
	}

	@Override
	public List<Redundant> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		Set<String> twinned = new HashSet<>();
		DuplicateRule.everywhere(checked).forEach(twinned::addAll);
		OfRules<Redundant> facts = new OfRules<>();
		checked.each(this, (part, redundants) -> redundants.forEach(fact -> facts.add(fact.rule(), part, fact)));
		facts.eachPart(checked, (name, byPart) -> {
			Map<List<String>, List<String>> familiesByCover = new LinkedHashMap<>();
			byPart.forEach((part, fact) -> {
				if (!fact.silent()) {
					familiesByCover.computeIfAbsent(fact.coveredBy(), key -> new ArrayList<>()).addAll(part.families());
				}
			});
			Rule rule = checked.base().rule(name).orElseThrow();
			if (!familiesByCover.isEmpty() && !twinned.contains(name) && !corroborates(checked.base(), rule)) {
				report(checked, rule, familiesByCover);
			}
		});
	}

	/**
	 * Returns whether a rule points to a fault by evidence of its own, on which no other rule that comes to the same
	 * conclusion rests: a second pointer is worth having, though it changes no verdict.
	 */
	private static boolean corroborates(RuleBase base, Rule rule) {
		Set<String> own = evidence(rule, false);
		Set<String> says = says(rule);
		if (own.isEmpty() || says.isEmpty() || waitsForItsOwn(rule)) {
			return false;
		}
		for (Rule other : base.rules()) {
			if (other != rule && !Collections.disjoint(says(other), says) && !Collections.disjoint(evidence(other, true), own)) {
				return false;
			}
		}
		return true;
	}

	/** Returns whether a rule comes to a conclusion on a fault of which it asks for a verdict already. */
	private static boolean waitsForItsOwn(Rule rule) {
		Set<String> asked = new HashSet<>();
		rule.given().forEach(given -> given.eachAtom(atom -> {
			if (atom instanceof Condition.VerdictIs is) {
				asked.add(is.fault());
			}
		}));
		return rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream())
				.anyMatch(said -> said instanceof Conclusion.OnFault on && asked.contains(on.fault()));
	}

	/** Returns the tests a rule rests on; for a rule without any, or if all is asked for, its signs and codes too. */
	private static Set<String> evidence(Rule rule, boolean all) {
		Set<String> tests = new HashSet<>();
		Set<String> seen = new HashSet<>();
		rule.test().ifPresent(test -> tests.add("test " + test));
		rule.given().forEach(given -> given.eachAtom(atom -> atom.visit(
				(Condition.TraitIs is) -> { },
				(Condition.SignIs is) -> seen.add("sign " + is.sign()),
				(Condition.TestIs is) -> tests.add("test " + is.test()),
				(Condition.CodeIs is) -> seen.add("code " + is.code()),
				(Condition.ModuleIs is) -> { },
				(Condition.VerdictIs is) -> { },
				(Condition.Unexplained is) -> { })));
		if (all || tests.isEmpty()) {
			tests.addAll(seen);
		}
		return tests;
	}

	private static Set<String> says(Rule rule) {
		Set<String> says = new HashSet<>();
		rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(conclusion -> {
			if (conclusion instanceof Conclusion.OnFault on) {
				says.add(on.verdict() + " " + on.fault());
			}
		}));
		return says;
	}

	/** Each family is told its own reason, where reasons differ. */
	private void report(Checked checked, Rule rule, Map<List<String>, List<String>> familiesByCover) {
		List<String> reasons = new ArrayList<>();
		List<Place> lines = new ArrayList<>();
		familiesByCover.forEach((coveredBy, families) -> {
			String where = familiesByCover.size() == 1 ? ""
					: (families.size() == 1 ? " (family " : " (families ") + String.join(", ", families) + ")";
			reasons.add((coveredBy.isEmpty() ? "it says only what it waits for"
					: "whenever it applies, " + (coveredBy.size() == 1 ? "rule " : "rules ") + String.join(", ", coveredBy)
							+ " already " + (coveredBy.size() == 1 ? "says" : "say") + " the same")
					+ where);
			coveredBy.forEach(other -> lines.add(new Place(checked.base().rule(other).orElseThrow().span(), "rule " + other + where)));
		});
		Checked.Draftsman flaw = checked.flaw(this, rule.name(), rule.span())
				.says("Rule " + rule.name() + " adds nothing: " + String.join("; ", reasons) + ".")
				.shownBy(lines.isEmpty() ? new Evidence.Text() : new Evidence.Core(lines)).about(rule);
		familiesByCover.keySet().stream().flatMap(List::stream).forEach(other -> flaw.about(checked.base().rule(other).orElseThrow()));
		flaw.fix(new Fix.RemoveRule("Remove the rule", rule.name())).add();
	}
}
