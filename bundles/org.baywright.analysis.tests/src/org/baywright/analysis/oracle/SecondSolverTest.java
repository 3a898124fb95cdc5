package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Condition;
import org.baywright.model.Family;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rule bases too large to enumerate, judged by a second solver of another kind: Z3 (de Moura and Bjorner, TACAS 2008),
 * asked about every branch and every pair of branches. The property baywright.bases multiplies how many bases are made,
 * 1 unless told; with 20 some 2400 of them are judged.
 */
class SecondSolverTest {

	@ParameterizedTest(name = "{0} bases of {5} rules, seed {7}")
	@CsvSource({ "120, 1, 4, 4, 6, 14, 3, 11", "60, 2, 5, 6, 8, 24, 4, 12", "25, 2, 6, 8, 12, 40, 6, 13" })
	void findsWhatZ3Finds(int share, int families, int signs, int tests, int faults, int rules, int laws, long seed) {
		int count = share * Integer.getInteger("baywright.bases", 1);
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, true, false);
		int judged = 0;
		int clashes = 0;
		for (int i = 0; i < count; i++) {
			RuleBase base = new RandomBases(seed * 100_000 + i, shape).states(i % 2 == 0).chains(i % 3 == 0).next();
			if (waitsForItself(base)) {
				continue; // outside of what the plain encoding can say
			}
			Report report = new Analysis().check(base, Listener.NONE);
			if (!OracleTest.subjects(report, "impossible-vehicle").isEmpty()) {
				continue;
			}
			judged++;
			clashes += compare("base " + i, base, report);
		}
		assertTrue(judged > count / 4, "only " + judged + " of " + count + " bases could be judged");
		assertTrue(clashes > judged / 2, "the bases should contradict themselves often");
	}

	private static int compare(String label, RuleBase base, Report report) {
		Set<String> contradictions = new TreeSet<>();
		Set<String> live = new HashSet<>();
		Set<String> gaps = new TreeSet<>();
		for (Family family : base.vehicleFamilies()) {
			try (PlainSmt smt = new PlainSmt(base, family.name())) {
				for (String a : smt.branches()) {
					if (smt.canFire(a)) {
						live.add(a);
						clashes(base, smt, a, contradictions);
					}
				}
				for (String sign : asked(base, family.name())) {
					if (smt.hasGap(sign)) {
						gaps.add(sign);
					}
				}
			}
		}
		Set<String> clashes = OracleTest.subjects(report, "contradiction");
		assertEquals(OracleTest.plain("contradiction", contradictions), OracleTest.plain("contradiction", clashes), label);
		int faults = clashes.stream().mapToInt(subject -> subject.substring(0, subject.indexOf('/')).split("\\+").length).sum();
		assertEquals(OracleTest.plain("contradiction", clashes).size(), faults, label + ": one is told twice");
		Set<String> dead = new TreeSet<>();
		for (Rule rule : base.rules()) {
			List<String> branches = new java.util.ArrayList<>();
			for (int i = 0; i < rule.outcomes().size(); i++) {
				branches.add(rule.name() + "/" + i);
			}
			if (branches.stream().noneMatch(live::contains)) {
				dead.add(rule.name());
			} else {
				branches.stream().filter(branch -> !live.contains(branch)).forEach(dead::add);
			}
		}
		assertEquals(dead, OracleTest.plain("dead-rule", OracleTest.subjects(report, "dead-rule")), label);
		Set<String> told = new TreeSet<>();
		for (Flaw flaw : report.flaws()) {
			if (flaw.check().equals("gap") && flaw.evidence() instanceof Evidence.Region) {
				told.add(flaw.id().substring("gap:".length(), flaw.id().indexOf('/')));
			}
		}
		assertEquals(gaps, told, label + " gaps");
		return contradictions.size();
	}

	private static void clashes(RuleBase base, PlainSmt smt, String a, Set<String> into) {
		for (String b : smt.branches()) {
			for (String said : says(base, a)) {
				if (said.startsWith("CONFIRMED ")) {
					String fault = said.substring("CONFIRMED ".length());
					if (says(base, b).contains("CLEARED " + fault) && smt.canFire(a, b)) {
						into.add(fault + "/" + a.substring(0, a.indexOf('/')) + "/" + b.substring(0, b.indexOf('/')));
					}
				}
			}
		}
	}

	private static Set<String> says(RuleBase base, String branch) {
		return Enumeration.says(base.rule(branch.substring(0, branch.indexOf('/'))).orElseThrow(),
				Integer.parseInt(branch.substring(branch.indexOf('/') + 1)));
	}

	private static Set<String> asked(RuleBase base, String family) {
		Set<String> signs = new TreeSet<>();
		base.signs().forEach(sign -> {
			if (Enumeration.rulesOf(base, family).stream()
					.anyMatch(rule -> rule.given().toString().contains("sign=" + sign.name() + ","))) {
				signs.add(sign.name());
			}
		});
		return signs;
	}

	static boolean waitsForItself(RuleBase base) {
		for (Rule rule : base.rules()) {
			Set<String> reached = new HashSet<>();
			collect(base, rule, reached);
			if (rule.outcomes().stream().anyMatch(outcome -> Enumeration.says(rule, rule.outcomes().indexOf(outcome))
					.stream().anyMatch(reached::contains))) {
				return true;
			}
		}
		return false;
	}

	private static void collect(RuleBase base, Rule rule, Set<String> reached) {
		Set<String> looks = new TreeSet<>();
		rule.given().forEach(given -> mentions(base, given, looks));
		for (String verdict : looks) {
			if (reached.add(verdict)) {
				for (Rule other : base.rules()) {
					for (int i = 0; i < other.outcomes().size(); i++) {
						if (Enumeration.says(other, i).contains(verdict)) {
							collect(base, other, reached);
						}
					}
				}
			}
		}
	}

	private static void mentions(RuleBase base, Condition condition, Set<String> into) {
		condition.visit(
				(Condition.And and) -> and.parts().forEach(part -> mentions(base, part, into)),
				(Condition.Or or) -> or.parts().forEach(part -> mentions(base, part, into)),
				(Condition.Not not) -> mentions(base, not.part(), into),
				(Condition.Atom atom) -> atom.visit(
						(Condition.TraitIs is) -> { },
						(Condition.SignIs is) -> { },
						(Condition.TestIs is) -> { },
						(Condition.CodeIs is) -> { },
						(Condition.ModuleIs is) -> { },
						(Condition.VerdictIs is) -> into.add(is.verdict() + " " + is.fault()),
						(Condition.Unexplained is) -> base.vehicleFamilies()
								.forEach(family -> new Enumeration(base).answering(is.sign(), family.name())
										.forEach(fault -> into.add("CONFIRMED " + fault)))));
	}
}
