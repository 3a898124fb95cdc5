package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.Situation;
import org.baywright.analysis.oracle.Enumeration.Sit;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Thousands of random rule bases, each judged by listing all its situations: the same flaws, every witness shown to
 * be one and to be the smallest, every gap covered by exactly the regions told.
 *
 * <p>The classes of anomaly are those of Preece and Shinghal, "Foundation and application of knowledge base
 * verification", International Journal of Intelligent Systems 9 (1994): redundancy (unfirable, subsumed, duplicate,
 * unusable), ambivalence, circularity, deficiency.
 */
class OracleTest {

	@ParameterizedTest(name = "{0} bases of {5} rules, {1} families, absence {7}, loops {8}, wide {9}, seed {10}")
	@CsvSource({ //
			"400, 1, 2, 2, 3, 4, 0, false, false, false, 1", //
			"300, 1, 2, 2, 3, 6, 1, false, false, false, 2", //
			"250, 1, 2, 2, 3, 6, 2, true, false, false, 3", //
			"250, 2, 2, 1, 3, 5, 1, true, false, false, 4", //
			"400, 1, 2, 1, 2, 6, 1, false, true, false, 5", //
			"400, 1, 2, 1, 2, 5, 1, true, true, false, 6", //
			"100, 2, 2, 1, 4, 8, 2, true, false, false, 7", //
			"300, 2, 2, 1, 3, 5, 3, true, false, true, 8", //
			"200, 1, 2, 2, 2, 6, 2, true, false, true, 9" })
	void findsExactlyWhatEnumerationFinds(int count, int families, int signs, int tests, int faults, int rules, int laws,
			boolean absence, boolean loops, boolean wide, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, absence, loops, wide);
		Map<String, Integer> seen = new ConcurrentSkipListMap<>();
		LongStream.range(seed * 100_000, seed * 100_000 + count).parallel().forEach(number -> {
			RuleBase base = new RandomBases(number, shape).states(number % 20 == 0).next();
			Report report = new Analysis().check(base, Listener.NONE);
			compare("base " + number, base, report);
			report.flaws().forEach(flaw -> seen.merge(flaw.check(), 1, Integer::sum));
		});
		for (String check : List.of("contradiction", "dead-rule", "redundant-rule", "gap", "unreachable-conclusion")) {
			assertTrue(seen.getOrDefault(check, 0) > count / 50, "the bases should show " + check + " often: " + seen);
		}
	}

	/** What a test, a module or a family is may change under rules and laws that stay the same objects. */
	@ParameterizedTest(name = "{0} bases, seed {1}")
	@CsvSource({ "150, 51" })
	void aRecheckAfterADeclarationChangedFindsWhatAFreshCheckFinds(int count, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(2, 2, 2, 3, 5, 3, true, false);
		int changed = 0;
		for (int i = 0; i < count; i++) {
			RandomBases random = new RandomBases(seed * 100_000 + i, shape);
			RuleBase base = random.next();
			Analysis kept = new Analysis();
			List<Flaw> before = kept.check(base, Listener.NONE).flaws();
			for (int edit = 0; edit < 4; edit++) {
				RuleBase edited = random.redeclared(base, edit);
				List<Flaw> fresh = new Analysis().check(edited, Listener.NONE).flaws();
				changed += fresh.equals(before) ? 0 : 1;
				assertEquals(fresh, kept.check(edited, Listener.NONE).flaws(), "base " + (seed * 100_000 + i) + " edit " + edit);
			}
		}
		assertTrue(changed > count / 2, "only " + changed + " edits changed what is found");
	}

	private static void compare(String label, RuleBase base, Report report) {
		Enumeration enumeration = new Enumeration(base);
		List<String> families = base.vehicleFamilies().stream().map(Family::name)
				.filter(family -> base.rules().stream().anyMatch(rule -> base.reach(rule.scope()).contains(family))).toList();
		boolean stratified = families.stream().allMatch(enumeration::isStratified);
		assertEquals(!stratified, has(report, "circle"), label + " circle");
		if (!stratified) {
			return;
		}
		boolean possible = base.vehicleFamilies().stream().noneMatch(family -> enumeration.complete(family.name()).isEmpty());
		assertEquals(!possible, has(report, "impossible-vehicle"), label + " impossible-vehicle");
		if (!possible) {
			return;
		}
		Expected expected = new Expected(base, enumeration, families);
		for (Map.Entry<String, Set<String>> check : expected.flaws().entrySet()) {
			assertEquals(check.getValue(), plain(check.getKey(), subjects(report, check.getKey())), label + " " + check.getKey());
		}
		assertEquals(Set.of(), subjects(report, "undecided"), label);
		checkGaps(label, base, report, enumeration, families);
		for (Flaw flaw : report.flaws()) {
			if (flaw.evidence() instanceof Evidence.Witness witness) {
				checkWitness(label + " " + flaw.id(), base, enumeration, expected, flaw, witness.situation());
			}
		}
	}

	/** Leaves out what depends on which family shows it, or shows it with fewer findings; what is told together counts for each. */
	static Set<String> plain(String check, Set<String> subjects) {
		return subjects.stream().flatMap(subject -> {
			String[] parts = subject.split("/");
			return switch (check) {
			case "contradiction", "suspected-and-cleared", "two-ends" -> Stream.of(parts[0].split("\\+"))
					.map(about -> Expected.pair(about, parts[1], parts[2]));
			case "duplicate-rule" -> IntStream.range(0, parts.length).boxed()
					.flatMap(i -> IntStream.range(i + 1, parts.length).mapToObj(j -> parts[i] + "/" + parts[j]));
			case "exclusive-faults" -> Stream.of(Expected.pair(parts[0], parts[1], parts[2]));
			case "dead-rule" -> Stream.of(subject.replaceFirst("/f\\d$", ""));
			default -> Stream.of(subject);
			};
		}).collect(Collectors.toCollection(TreeSet::new));
	}

	private static boolean has(Report report, String check) {
		return !subjects(report, check).isEmpty();
	}

	static Set<String> subjects(Report report, String check) {
		Set<String> subjects = new TreeSet<>();
		report.flaws().stream().filter(flaw -> flaw.check().equals(check))
				.forEach(flaw -> subjects.add(flaw.id().substring(check.length() + 1)));
		return subjects;
	}

	// ---- gaps --------------------------------------------------------------------------------------------------

	private static void checkGaps(String label, RuleBase base, Report report, Enumeration enumeration,
			List<String> families) {
		for (String family : families) {
			for (String sign : base.signs().stream().map(s -> s.name()).toList()) {
				List<Situation> regions = new ArrayList<>();
				boolean more = false;
				for (Flaw flaw : report.flaws()) {
					if (flaw.evidence() instanceof Evidence.Region region && flaw.id().startsWith("gap:" + sign + "/")
							&& isAbout(flaw, region, family)) {
						regions.add(region.situation());
						more |= flaw.message().contains("more such regions");
					}
				}
				boolean asked = base.rules().stream().filter(rule -> base.reach(rule.scope()).contains(family))
						.anyMatch(rule -> rule.given().toString().contains("sign=" + sign + ","));
				// what has nothing to do with the sign is left aside, as long as it can be quiet
				Set<String> related = enumeration.connected(family, sign);
				Set<Map<String, Integer>> gaps = new java.util.HashSet<>();
				for (Sit sit : enumeration.complete(family)) {
					if (isQuiet(enumeration, sit) && shows(enumeration, sit, sign)) {
						gaps.add(related(sit, related));
					}
				}
				for (Sit sit : enumeration.complete(family)) {
					boolean told = shows(enumeration, sit, sign) && regions.stream().anyMatch(region -> contains(region, sit));
					if (told || asked && !more) {
						assertEquals(gaps.contains(related(sit, related)), told, label + " gap of " + sign + " in " + sit);
					}
				}
				if (!asked) {
					boolean possible = enumeration.complete(family).stream().anyMatch(sit -> shows(enumeration, sit, sign));
					boolean askedElsewhere = base.rules().stream().anyMatch(rule -> !base.reach(rule.scope()).isEmpty()
							&& rule.given().toString().contains("sign=" + sign + ","));
					assertEquals(askedElsewhere && possible, isToldAsForgotten(report, sign, family), label + " no rule for " + sign + " in " + family);
				}
				for (Situation region : regions) {
					checkWidest(label, enumeration, family, sign, region, gaps, related);
				}
			}
		}
	}

	/** Whether a sign is there, on a vehicle on which it makes sense. */
	private static boolean shows(Enumeration enumeration, Sit sit, String sign) {
		return sit.known().getOrDefault("sign " + sign, -1) == 0 && enumeration.isForVehicle(sign, sit);
	}

	private static boolean isToldAsForgotten(Report report, String sign, String family) {
		return report.flaws().stream().filter(flaw -> flaw.id().startsWith("gap:" + sign + "/")
				&& !(flaw.evidence() instanceof Evidence.Region))
				.anyMatch(flaw -> List.of(flaw.id().substring(flaw.id().indexOf('/') + 1).split("\\+")).contains(family));
	}

	private static boolean isAbout(Flaw flaw, Evidence.Region region, String family) {
		return flaw.message().contains("(families ") ? flaw.message().matches(".*\\(families [^)]*\\b" + family + "\\b.*")
				: region.situation().family().equals(family);
	}

	private static boolean isQuiet(Enumeration enumeration, Sit sit) {
		return enumeration.derive(sit, null).verdicts().stream()
				.noneMatch(said -> said.startsWith("CONFIRMED") || said.startsWith("REFERS"));
	}

	private static Map<String, Integer> related(Sit sit, Set<String> related) {
		Map<String, Integer> part = new TreeMap<>(sit.known());
		part.keySet().removeIf(key -> !key.startsWith("trait ") && !related.contains(key));
		return part;
	}

	/** Leaving out any one restriction must take in some situation that is no gap. */
	private static void checkWidest(String label, Enumeration enumeration, String family, String sign, Situation region,
			Set<Map<String, Integer>> gaps, Set<String> related) {
		for (Situation.Fact fact : region.facts().subList(1, region.facts().size())) {
			Situation wider = new Situation(family, region.facts().stream().filter(other -> other != fact).toList());
			List<Sit> showing = enumeration.complete(family).stream().filter(sit -> shows(enumeration, sit, sign)).toList();
			if (showing.stream().anyMatch(sit -> contains(wider, sit) && !contains(region, sit))) {
				assertTrue(showing.stream().filter(sit -> contains(wider, sit))
						.anyMatch(sit -> !gaps.contains(related(sit, related))), label + " could be told without " + fact);
			}
		}
	}

	private static boolean contains(Situation region, Sit sit) {
		return region.facts().stream().allMatch(fact -> {
			Integer value = sit.known().get(key(fact));
			return value != null && fact.values().contains(value);
		});
	}

	private static String key(Situation.Fact fact) {
		return fact.variable().kind().name().toLowerCase(java.util.Locale.ROOT) + " " + fact.variable().name();
	}

	// ---- witnesses ---------------------------------------------------------------------------------------------

	private static void checkWitness(String label, RuleBase base, Enumeration enumeration, Expected expected,
			Flaw flaw, Situation witness) {
		Set<String> wanted = new TreeSet<>();
		String[] subject = flaw.id().substring(flaw.check().length() + 1).split("/");
		boolean blind = flaw.check().equals("blind-evidence");
		wanted.add(blind ? subject[0] : subject[1]);
		if (!blind) {
			wanted.add(subject[2]);
		}
		List<Sit> vehicles = vehicles(base, witness);
		assertFalse(vehicles.isEmpty(), label);
		for (Sit sit : vehicles) {
			assertTrue(expected.situations(witness.family()).contains(sit), label + " is no situation: " + sit);
			Set<String> fired = new TreeSet<>();
			enumeration.derive(sit, null).fired().forEach(branch -> fired.add(branch.substring(0, branch.indexOf('/'))));
			assertTrue(fired.containsAll(wanted), label + " applies only " + fired + " in " + sit);
		}
		if (!blind) {
			List<String> about = flaw.check().equals("exclusive-faults") ? List.of(subject[0]) : List.of(subject[0].split("\\+"));
			for (String each : about) {
				long least = expected.least(flaw.check(), new String[] { each, subject[1], subject[2] });
				assertEquals(least, witness.findings(), label + " is not the smallest: " + witness);
			}
		}
	}

	/** Returns the witness for every value of the traits that it says do not matter. */
	private static List<Sit> vehicles(RuleBase base, Situation witness) {
		List<Map<String, Integer>> all = new ArrayList<>(List.of(new HashMap<>()));
		Map<String, org.baywright.model.IndexSet> choices = new TreeMap<>();
		base.traitsOf(witness.family()).values().forEach(
				trait -> choices.put("trait " + trait.name(), org.baywright.model.IndexSet.all(trait.domain())));
		for (Situation.Fact fact : witness.facts()) {
			choices.put(key(fact), key(fact).startsWith("trait ") ? fact.values()
					: org.baywright.model.IndexSet.range(fact.example(), fact.example()));
		}
		choices.forEach((key, values) -> {
			List<Map<String, Integer>> next = new ArrayList<>();
			for (Map<String, Integer> vehicle : all) {
				for (int value = values.first(); value <= values.last(); value++) {
					if (values.contains(value)) {
						Map<String, Integer> more = new HashMap<>(vehicle);
						more.put(key, value);
						next.add(more);
					}
				}
			}
			all.clear();
			all.addAll(next);
		});
		for (Map<String, Integer> vehicle : all) {
			for (org.baywright.model.Code code : base.codes()) {
				if (vehicle.getOrDefault("module " + code.module(), 0) == 1) {
					vehicle.put("code " + code.name(), 2); // goes without saying
				}
			}
		}
		return all.stream().map(values -> new Sit(witness.family(), values)).toList();
	}
}
