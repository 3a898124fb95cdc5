package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Situation;
import org.baywright.analysis.oracle.Enumeration.Result;
import org.baywright.analysis.oracle.Enumeration.Sit;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.NamedValue;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Skill;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.baywright.model.VerifyStep;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A verification passes with what confirms the fault exactly where the list of all situations has such a one. */
class VerificationTest {

	private static final String CHECK = "verify-expects-fault";

	@ParameterizedTest(name = "{0} bases of {5} rules with {6} laws, absence {7}, loops {8}, wide {9}, seed {10}")
	@CsvSource({ //
			"200, 1, 2, 2, 3, 5, 0, true, false, false, 71", //
			"150, 2, 1, 2, 2, 5, 2, true, false, true, 72", //
			"150, 1, 2, 1, 2, 5, 1, false, true, false, 73" })
	void findsExactlyWhatEnumerationFinds(int count, int families, int signs, int tests, int faults, int rules, int laws,
			boolean absence, boolean loops, boolean wide, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, absence, loops, wide);
		int told = 0;
		int quiet = 0;
		for (int i = 0; i < count; i++) {
			RuleBase bare = new RandomBases(seed * 100_000 + i, shape).next();
			Enumeration enumeration = new Enumeration(bare);
			List<String> all = bare.vehicleFamilies().stream().map(Family::name).toList();
			if (all.stream().allMatch(enumeration::isStratified)
					&& all.stream().noneMatch(family -> enumeration.complete(family).isEmpty())) {
				// one part may know nothing of the laws of another
				RuleBase base = withRepairs(bare, new Random(seed * 100_000 + i), laws == 0 ? 2 : 1);
				Map<String, Integer> expected = expected(base, enumeration, all);
				assertEquals(expected, found(base), "base " + (seed * 100_000 + i));
				told += expected.size();
				quiet += base.repairs().size() - expected.size();
			}
		}
		assertTrue(told > count / 6 && quiet > count / 6, told + " told, " + quiet + " not");
	}

	private static RuleBase withRepairs(RuleBase bare, Random random, int most) {
		RuleBase.Builder base = new RuleBase.Builder(bare.name()).add(bare);
		for (Fault fault : bare.faults()) {
			Map<String, VerifyStep> steps = new TreeMap<>();
			for (int i = 0; i < most; i++) {
				if (random.nextInt(4) == 0) {
					steps.put("low", new VerifyStep.Expect("low", random.nextBoolean(), Span.NONE));
				} else {
					org.baywright.model.Test test = bare.tests().get(random.nextInt(bare.tests().size()));
					steps.put(test.name(), new VerifyStep.Repeat(test.name(), Optional.of(values(test.domain(), random)), Span.NONE));
				}
			}
			base.repairs.add(new Repair("mend_" + fault.name(), "", List.of(fault.name()), Optional.empty(), List.of(), List.of(), List.of(),
					BigDecimal.ONE, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), true, List.copyOf(steps.values()), Span.NONE));
		}
		return base.build();
	}

	private static ValueSet values(Domain domain, Random random) {
		if (domain instanceof Domain.Names names) {
			List<String> words = names.values().stream().map(NamedValue::name).toList();
			int first = random.nextInt(words.size());
			return new ValueSet.Choices(words.subList(first, Math.min(words.size(), first + 1 + random.nextInt(2))));
		}
		BigDecimal limit = BigDecimal.valueOf(1 + random.nextInt(2));
		return random.nextBoolean() ? ValueSet.Band.atMost(limit) : ValueSet.Band.atLeast(limit);
	}

	/** Returns the least value of each test or code with which a verification passes while a rule confirms. */
	private static Map<String, Integer> found(RuleBase base) {
		Map<String, Integer> found = new TreeMap<>();
		for (Flaw flaw : new Analysis().check(base, Listener.NONE).flaws()) {
			if (flaw.check().equals(CHECK)) {
				String subject = flaw.id().substring(CHECK.length() + 1);
				Situation witness = ((Evidence.Witness) flaw.evidence()).situation();
				String name = subject.substring(subject.indexOf('/') + 1);
				found.put(subject, witness.facts().stream().filter(fact -> fact.variable().name().equals(name)).findFirst()
						.orElseThrow().example());
			}
		}
		return found;
	}

	private static Map<String, Integer> expected(RuleBase base, Enumeration enumeration, List<String> families) {
		Map<String, Integer> expected = new TreeMap<>();
		for (String family : families) {
			List<Rule> rules = Enumeration.rulesOf(base, family);
			for (Sit sit : enumeration.all(family)) {
				Result result = enumeration.derive(sit, null);
				for (Repair repair : base.repairs()) {
					if (repair.verify().stream().allMatch(step -> passes(base, sit, step))) {
						String said = "CONFIRMED " + repair.fixes().get(0);
						for (VerifyStep step : repair.verify()) {
							for (Rule rule : rules) {
								if (confirms(enumeration, sit, result, rule, step, said)) {
									expected.merge(repair.name() + "/" + name(step), sit.known().get(key(step)), Math::min);
								}
							}
						}
					}
				}
			}
		}
		return expected;
	}

	private static String name(VerifyStep step) {
		return step instanceof VerifyStep.Repeat repeat ? repeat.test() : ((VerifyStep.Expect) step).code();
	}

	private static String key(VerifyStep step) {
		return (step instanceof VerifyStep.Repeat ? "test " : "code ") + name(step);
	}

	private static boolean passes(RuleBase base, Sit sit, VerifyStep step) {
		if (step instanceof VerifyStep.Repeat repeat && !base.reaches(base.scopeOf(repeat.test()), sit.family())) {
			return true; // there is nothing to repeat on such a vehicle
		}
		Integer value = sit.known().get(key(step));
		return value != null && (step instanceof VerifyStep.Repeat repeat
				? repeat.values().orElseThrow().in(base.test(repeat.test()).orElseThrow().domain()).contains(value)
				: value == (((VerifyStep.Expect) step).present() ? 0 : 1));
	}

	/** The rule fires and says so, by its test; or, if it runs none, it would not if nobody had looked. */
	private static boolean confirms(Enumeration enumeration, Sit sit, Result result, Rule rule, VerifyStep step, String said) {
		for (int i = 0; i < rule.outcomes().size(); i++) {
			if (result.fired().contains(rule.name() + "/" + i) && Enumeration.says(rule, i).contains(said)) {
				Map<String, Integer> less = new HashMap<>(sit.known());
				less.remove(key(step));
				List<Condition> given = new ArrayList<>(rule.given());
				boolean stillFires = given.stream()
						.allMatch(each -> enumeration.holds(each, new Sit(sit.family(), less), result.verdicts()));
				if (rule.test().map(name(step)::equals).orElse(!stillFires)) {
					return true;
				}
			}
		}
		return false;
	}
}
