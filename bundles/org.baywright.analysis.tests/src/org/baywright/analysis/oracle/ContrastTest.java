package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.Effect;
import org.baywright.analysis.oracle.Enumeration.Sit;
import org.baywright.analysis.proof.Contrast;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.References;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Thousands of pairs of random rule bases, each compared by listing all situations of both: what is told to change in a
 * situation does, and what changes is told.
 */
class ContrastTest {

	@ParameterizedTest(name = "{0} pairs of {5} rules, {1} families, absence {7}, loops {8}, wide {9}, seed {10}")
	@CsvSource({ //
			"300, 1, 2, 2, 3, 4, 0, false, false, false, 1", //
			"150, 1, 2, 2, 3, 6, 1, true, false, false, 2", //
			"250, 2, 2, 1, 3, 5, 1, true, false, false, 3", //
			"300, 1, 2, 1, 2, 6, 1, false, true, false, 4", //
			"300, 1, 2, 1, 2, 5, 1, true, true, false, 5", //
			"300, 2, 2, 1, 3, 5, 3, true, false, true, 6", //
			"60, 1, 2, 2, 2, 6, 2, true, false, true, 7" })
	void editedRulesAndLawsChangeExactlyWhatEnumerationSees(int count, int families, int signs, int tests, int faults, int rules, int laws, boolean absence,
			boolean loops, boolean wide, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, absence, loops, wide);
		AtomicInteger changed = new AtomicInteger();
		AtomicInteger compared = new AtomicInteger();
		LongStream.range(seed * 100_000, seed * 100_000 + count).parallel().forEach(number -> {
			RandomBases random = new RandomBases(number, shape).states(number % 50 == 0);
			RuleBase old = random.next();
			edited(old, random.next(), new Random(number)).ifPresent(now -> {
				compared.incrementAndGet();
				changed.addAndGet(compare("pair " + number, old, now) ? 1 : 0);
			});
		});
		assertTrue(compared.get() > count / 3, "only " + compared + " pairs could be compared");
		assertTrue(changed.get() > compared.get() / 4 && changed.get() < compared.get(), changed + " of " + compared + " pairs differ");
	}

	@ParameterizedTest(name = "{0} pairs, seed {1}")
	@CsvSource({ "100, 11" })
	void redeclaredThingsChangeExactlyWhatEnumerationSees(int count, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(2, 2, 2, 3, 5, 0, true, false, true);
		AtomicInteger changed = new AtomicInteger();
		LongStream.range(seed * 100_000, seed * 100_000 + count).parallel().forEach(number -> {
			RandomBases random = new RandomBases(number, shape);
			RuleBase old = random.next();
			for (int edit = 0; edit < 4; edit++) {
				changed.addAndGet(compare("pair " + number + " edit " + edit, old, random.redeclared(old, edit)) ? 1 : 0);
			}
		});
		assertTrue(changed.get() > count / 2, "only " + changed + " edits changed something");
	}

	/** Returns the base with a rule or two gone, another there instead, or other laws. */
	private static Optional<RuleBase> edited(RuleBase old, RuleBase other, Random random) {
		RuleBase.Builder now = new RuleBase.Builder(old.name()).add(old);
		int edit = random.nextInt(4);
		if (edit == 0 || edit == 2) {
			now.rules.remove(random.nextInt(now.rules.size()));
		}
		if (edit <= 1) {
			Rule rule = other.rules().get(random.nextInt(other.rules().size()));
			now.rules.removeIf(one -> one.name().equals(rule.name()));
			now.rules.add(rule);
		}
		if (edit == 3) {
			now.laws.clear();
			now.laws.addAll(other.laws());
		}
		try {
			return Optional.of(now.build());
		} catch (References.Missing somethingElsewhere) {
			return Optional.empty();
		}
	}

	private static boolean compare(String label, RuleBase old, RuleBase now) {
		Enumeration before = new Enumeration(old);
		Enumeration after = new Enumeration(now);
		Contrast contrast = new Contrast(old, now, Prover.CONFLICT_LIMIT);
		contrast.run(Listener.NONE);
		boolean differs = false;
		if (old.asksForState("low") != now.asksForState("low")) {
			return false; // a code is then read in two ways, which are not listed side by side
		}
		assertFalse(contrast.hasMore(), label);
		for (Family family : now.vehicleFamilies()) {
			if (!before.isStratified(family.name()) || !after.isStratified(family.name())) {
				return false;
			}
		}
		assertEquals(List.of(), contrast.undecided(), label);
		for (Family family : now.vehicleFamilies()) {
			List<Effect> effects = contrast.effects().stream().filter(effect -> effect.families().contains(family.name())).toList();
			Set<Effect> shown = new HashSet<>();
			Set<Sit> possibleBefore = before.all(family.name());
			Set<Sit> possibleNow = after.all(family.name());
			boolean sameValues = before.variables(family.name()).equals(after.variables(family.name())) && sameDomains(old, now);
			for (Sit sit : possibleNow) {
				Sit was = sameValues ? sit : translated(sit, now, old, before);
				if (!sameValues || possibleBefore.contains(sit)) {
					differs |= judge(label, sit, now, before.derive(was, null).verdicts(), after.derive(sit, null).verdicts(), effects, shown);
				} else {
					differs = true;
				}
			}
			for (Sit sit : possibleBefore) {
				if (!sameValues) {
					differs |= judge(label, sit, old, before.derive(sit, null).verdicts(), after.derive(translated(sit, old, now, after), null).verdicts(), effects, shown);
				}
			}
			for (Effect effect : effects) {
				assertTrue(effect.kind() != Effect.Kind.VERDICTS || shown.contains(effect), label + ": never happens: " + effect);
			}
			if (sameValues) {
				Set<Sit> was = new HashSet<>(before.complete(family.name()));
				Set<Sit> is = new HashSet<>(after.complete(family.name()));
				coverExactly(label, now, was, is, Effect.Kind.POSSIBLE, effects);
				coverExactly(label, now, is, was, Effect.Kind.IMPOSSIBLE, effects);
			}
		}
		return differs;
	}

	private static boolean sameDomains(RuleBase old, RuleBase now) {
		return now.tests().stream().allMatch(test -> old.test(test.name()).orElseThrow().domain().equals(test.domain()));
	}

	/** Every vehicle that only one side's laws let be lies in a region, and no region takes in one that the stricter side lets be. */
	private static void coverExactly(String label, RuleBase base, Set<Sit> strict, Set<Sit> lenient, Effect.Kind kind, List<Effect> effects) {
		for (Sit sit : lenient) {
			boolean covered = effects.stream().anyMatch(effect -> effect.kind() == kind && covers(effect, sit, base));
			assertEquals(!strict.contains(sit), covered, label + " " + kind + " " + sit);
		}
		for (Sit sit : strict) {
			assertFalse(effects.stream().anyMatch(effect -> effect.kind() == kind && covers(effect, sit, base)), label + " " + kind + " " + sit);
		}
	}

	/**
	 * What is told to come stands now, what is told to go stood before, and but for what stands on both sides just that
	 * changed. Whether a verdict comes from rules that are as before is not listed: where it stands on one side only it does not.
	 */
	private static boolean judge(String label, Sit sit, RuleBase base, Set<String> was, Set<String> is, List<Effect> effects, Set<Effect> shown) {
		Set<String> changed = new TreeSet<>();
		was.stream().filter(verdict -> !is.contains(verdict)).forEach(verdict -> changed.add("- " + verdict));
		is.stream().filter(verdict -> !was.contains(verdict)).forEach(verdict -> changed.add("+ " + verdict));
		Set<String> certain = new TreeSet<>();
		Set<String> possible = new TreeSet<>();
		for (Effect effect : effects) {
			boolean inContext = say(effect.with()).stream().allMatch(verdict -> was.contains(verdict) && is.contains(verdict))
					&& say(effect.without()).stream().noneMatch(verdict -> was.contains(verdict) || is.contains(verdict));
			if (effect.kind() == Effect.Kind.VERDICTS && inContext && covers(effect, sit, base)) {
				Set<String> told = new TreeSet<>();
				say(effect.lost()).forEach(verdict -> told.add("- " + verdict));
				say(effect.gained()).forEach(verdict -> told.add("+ " + verdict));
				possible.addAll(told);
				if (say(effect.anyway()).stream().noneMatch(verdict -> was.contains(verdict) && is.contains(verdict))) {
					told.forEach(one -> assertTrue((one.startsWith("-") ? was : is).contains(one.substring(2)), () -> label + " is told: " + one + " " + sit + "\n" + effect));
					certain.addAll(told);
					told.retainAll(changed);
					if (!told.isEmpty()) {
						shown.add(effect);
					}
				}
			}
		}
		certain.removeIf(one -> was.contains(one.substring(2)) && is.contains(one.substring(2)));
		assertTrue(changed.containsAll(certain), () -> label + " does not change: " + certain + " " + changed + sit + "\n" + effects);
		assertTrue(possible.containsAll(changed), () -> label + " is not told: " + changed + " " + possible + sit + "\n" + effects);
		return !changed.isEmpty();
	}

	private static List<String> say(List<Verdict> verdicts) {
		return verdicts.stream().map(ContrastTest::say).toList();
	}

	private static String say(Verdict verdict) {
		return verdict.isReferral() ? "REFERS " + verdict.fault() : verdict.kind() + " " + verdict.fault();
	}

	private static boolean covers(Effect effect, Sit sit, RuleBase base) {
		for (Situation.Fact fact : effect.facts()) {
			Integer value = sit.known().get(key(fact.variable()));
			if (value == null || !fact.values().contains(inJoined(effect, fact.variable(), sit, base, value))) {
				return false;
			}
		}
		return effect.open().stream().noneMatch(variable -> sit.known().containsKey(key(variable)));
	}

	private static int inJoined(Effect effect, Variable variable, Sit sit, RuleBase base, int value) {
		Domain joined = effect.domains().get(variable);
		return joined == null ? value : index(domain(base, sit.family(), variable), value, joined);
	}

	private static Domain domain(RuleBase base, String family, Variable variable) {
		return variable.kind() == Variable.Kind.TRAIT ? base.traitsOf(family).get(variable.name()).domain() : base.test(variable.name()).orElseThrow().domain();
	}

	private static int index(Domain own, int value, Domain other) {
		if (own instanceof Domain.Names names) {
			return other.indexOf(names.values().get(value).name());
		}
		Domain.Quantity from = (Domain.Quantity) own;
		Domain.Quantity to = (Domain.Quantity) other;
		if (from.isNumber(value)) {
			BigDecimal number = from.value(value);
			return number.compareTo(to.low()) < 0 || number.compareTo(to.high()) > 0 ? -1 : to.floorIndex(number);
		}
		return to.indexOf((value == 0 ? from.under() : from.over()).orElseThrow().name());
	}

	/** What somebody knows who cannot see values that only the other side has. */
	private static Sit translated(Sit sit, RuleBase from, RuleBase to, Enumeration there) {
		Map<String, Integer> known = new HashMap<>();
		Set<String> has = there.variables(sit.family()).keySet();
		sit.known().forEach((key, value) -> {
			if (!has.contains(key)) {
				return;
			}
			if (key.startsWith("test ")) {
				int at = index(from.test(key.substring(5)).orElseThrow().domain(), value, to.test(key.substring(5)).orElseThrow().domain());
				if (at >= 0) {
					known.put(key, at);
				}
			} else {
				known.put(key, value);
			}
		});
		return new Sit(sit.family(), known);
	}

	private static String key(Variable variable) {
		return variable.kind().name().toLowerCase(Locale.ROOT) + " " + variable.name();
	}
}
