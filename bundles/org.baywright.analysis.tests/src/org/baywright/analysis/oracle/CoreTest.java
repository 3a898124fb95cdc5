package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Place;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Condition;
import org.baywright.model.Family;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Span;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Reason cores, judged by enumeration, and by Z3 where there is too much to enumerate. Rules without absence only: there,
 * taking a line away can only make more happen. With nothing but the lines of a core left in all rules and laws the rule
 * must still be dead, and without any one of them it must live.
 */
class CoreTest {

	@ParameterizedTest(name = "{0} bases of {5} rules, seed {7}, by Z3 {8}")
	@CsvSource({ "250, 2, 2, 2, 3, 4, 2, 21, false", "200, 2, 2, 2, 3, 6, 3, 22, false", "120, 2, 4, 4, 6, 14, 3, 23, true",
			"60, 2, 5, 6, 8, 24, 4, 24, true", "25, 2, 6, 8, 12, 40, 6, 25, true" })
	void coresAreEnoughAndMinimal(int count, int families, int signs, int tests, int faults, int rules, int laws,
			long seed, boolean byZ3) {
		Judge isDead = byZ3 ? CoreTest::isDeadForZ3 : CoreTest::isDead;
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, false, false);
		int judged = 0;
		int ofOneFamily = 0;
		for (int i = 0; i < count; i++) {
			RuleBase base = new RandomBases(seed * 100_000 + i, shape).next();
			if (byZ3 && SecondSolverTest.waitsForItself(base)) {
				continue; // outside of what the plain encoding can say
			}
			Report report = new Analysis().check(base, Listener.NONE);
			for (Flaw flaw : report.flaws()) {
				if (!flaw.check().equals("dead-rule") || !(flaw.evidence() instanceof Evidence.Core core)) {
					continue;
				}
				// the rule, or the rule and the first of the families that the reason holds in, or one outcome of the rule
				String[] subject = flaw.id().substring("dead-rule:".length()).split("/");
				List<String> dead = base.vehicleFamilies().stream().map(Family::name)
						.filter(family -> subject.length == 1 || subject.length == 2 && subject[1].equals(family)).toList();
				if (!dead.isEmpty()) {
					judge("base " + i + " " + flaw.id(), base, rest -> isDead.test(rest, subject[0], dead), core);
					judged++;
					ofOneFamily += subject.length - 1;
				}
			}
		}
		assertTrue(judged > count / 10, "only " + judged + " cores were judged");
		assertTrue(ofOneFamily > 0, "no reason was that of one family alone");
	}

	/** Says whether a rule can never fire in some families. */
	private interface Judge {
		boolean test(RuleBase base, String rule, List<String> families);
	}

	private static void judge(String label, RuleBase base, Predicate<RuleBase> isDead, Evidence.Core core) {
		Set<Integer> lines = new HashSet<>();
		Set<Integer> declared = new HashSet<>();
		for (Place place : core.lines()) {
			(place.note().startsWith("values of") ? declared : lines).add(place.span().line());
		}
		assertFalse(lines.isEmpty(), label + " has a reason");
		assertTrue(isDead.test(keep(base, lines)), label + ": the lines " + lines + " are not enough");
		for (int line : lines) {
			Set<Integer> fewer = new HashSet<>(lines);
			fewer.remove(line);
			assertFalse(isDead.test(keep(base, fewer)), label + ": line " + line + " of " + lines + " is not needed");
		}
	}

	private static boolean isDead(RuleBase base, String rule, List<String> families) {
		Enumeration enumeration = new Enumeration(base);
		return families.stream().noneMatch(family -> enumeration.all(family).stream()
				.anyMatch(sit -> enumeration.derive(sit, null).fired().stream().anyMatch(b -> b.startsWith(rule + "/"))));
	}

	private static boolean isDeadForZ3(RuleBase base, String rule, List<String> families) {
		for (String family : families) {
			try (PlainSmt smt = new PlainSmt(base, family)) {
				if (smt.branches().stream().anyMatch(branch -> branch.startsWith(rule + "/") && smt.canFire(branch))) {
					return false;
				}
			}
		}
		return true;
	}

	/** Returns the rule base with nothing demanded but on the given lines. */
	private static RuleBase keep(RuleBase base, Set<Integer> lines) {
		RuleBase.Builder builder = new RuleBase.Builder("core").add(base);
		builder.laws.removeIf(law -> !lines.contains(firstLine(law)));
		List<Rule> kept = base.rules().stream().flatMap(rule -> keep(rule, lines).stream()).toList();
		builder.rules.clear();
		builder.rules.addAll(kept);
		return builder.build();
	}

	/** A law is one statement and named by its own place. */
	private static int firstLine(Law law) {
		return law.span().line();
	}

	/** A test whose result is not demanded need not be done either: such outcomes are told without it. */
	private static List<Rule> keep(Rule rule, Set<Integer> lines) {
		List<Condition> given = rule.given().stream().map(condition -> keep(condition, lines)).toList();
		Optional<Condition> where = rule.scope().where().map(condition -> keep(condition, lines));
		Scope scope = new Scope(rule.scope().families(), rule.scope().except(), where, rule.scope().span());
		List<Outcome> demanded = new ArrayList<>();
		List<Outcome> free = new ArrayList<>();
		for (Outcome outcome : rule.outcomes()) {
			if (rule.test().isPresent() && lines.contains(outcome.span().line())) {
				demanded.add(outcome);
			} else {
				free.add(new Outcome(outcome.label(), Optional.empty(), true, outcome.conclusions(), outcome.span()));
			}
		}
		List<Rule> kept = new ArrayList<>();
		if (!demanded.isEmpty()) {
			kept.add(new Rule(rule.name(), rule.title(), scope, given, rule.states(), rule.test(), demanded, rule.provenance(), rule.testSpan(), rule.span()));
		}
		if (!free.isEmpty()) {
			kept.add(new Rule(rule.name() + "/free", rule.title(), scope, given, rule.states(), Optional.empty(), free, rule.provenance(), rule.testSpan(), rule.span()));
		}
		return kept;
	}

	private static Condition keep(Condition condition, Set<Integer> lines) {
		return condition.match(
				(Condition.And and) -> new Condition.And(and.parts().stream().map(part -> keep(part, lines)).toList(), and.span()),
				(Condition.Or or) -> new Condition.Or(or.parts().stream().map(part -> keep(part, lines)).toList(), or.span()),
				(Condition.Not not) -> keep(not, not.part().span(), lines),
				(Condition.Atom atom) -> keep(atom, atom.span(), lines));
	}

	private static Condition keep(Condition condition, Span line, Set<Integer> lines) {
		return lines.contains(line.line()) ? condition : new Condition.And(List.of(), condition.span());
	}
}
