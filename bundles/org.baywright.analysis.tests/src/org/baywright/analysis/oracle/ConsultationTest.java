package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.baywright.analysis.Consultation;
import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Standing;
import org.baywright.analysis.Consultation.State;
import org.baywright.analysis.Demand;
import org.baywright.analysis.Listener;
import org.baywright.analysis.oracle.Enumeration.Sit;
import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the bench says of half-known vehicles, against all ways in which they can go on. */
class ConsultationTest {

	private static final int LOOKS = 12;

	private final Map<State, Integer> seen = new EnumMap<>(State.class);
	private int clashes;
	private int minimal;

	@ParameterizedTest(name = "{0} bases of {5} rules, {6} laws, absence {7}, loops {8}, seed {9}")
	@CsvSource({ "60, 1, 2, 1, 3, 5, 0, true, false, 11", //
			"60, 1, 1, 2, 3, 6, 2, true, false, 12", //
			"60, 2, 2, 1, 3, 6, 2, false, true, 13" })
	void saysWhatAllSituationsSay(int count, int families, int signs, int tests, int faults, int rules, int laws,
			boolean absence, boolean loops, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, absence, loops);
		for (int i = 0; i < count; i++) {
			RuleBase base = new RandomBases(seed * 100_000 + i, shape).next();
			Enumeration enumeration = new Enumeration(base);
			for (Family family : base.vehicleFamilies()) {
				if (enumeration.isStratified(family.name())) {
					examine("base " + (seed * 100_000 + i), base, enumeration, family.name(), new Random(i));
				}
			}
		}
		for (State state : List.of(State.FIRED, State.OPEN, State.NEVER)) {
			assertTrue(seen.getOrDefault(state, 0) > count, state + " should be seen often: " + seen);
		}
		assertTrue(laws == 0 || clashes > count / 2, "clashes should be seen often: " + clashes);
		assertTrue(minimal > count / 2, "reasons with findings should be seen often: " + minimal);
	}

	private void examine(String label, RuleBase base, Enumeration enumeration, String family, Random random) {
		Map<Sit, Enumeration.Result> all = new HashMap<>();
		enumeration.all(family).forEach(sit -> all.put(sit, enumeration.derive(sit, null)));
		Consultation consultation = new Consultation(base, family);
		List<Sit> sits = new ArrayList<>(all.keySet());
		sits.sort(Comparator.comparing(sit -> sit.known().entrySet().stream().sorted(Map.Entry.comparingByKey())
				.toList().toString()));
		for (int look = 0; look < LOOKS && !sits.isEmpty(); look++) {
			Sit sit = sits.get(random.nextInt(sits.size()));
			compare(label + " " + sit, consultation.advise(readings(base, sit), Listener.NONE), base, enumeration, sit, all);
		}
		for (int look = 0; look < LOOKS; look++) {
			Sit sit = anything(enumeration, family, random);
			Advice advice = consultation.advise(readings(base, sit), Listener.NONE);
			boolean can = all.keySet().stream().anyMatch(other -> covers(other, sit.known()));
			assertEquals(can, advice.clashes().isEmpty(), label + " " + sit + advice.clashes());
			advice.clashes().forEach(clash -> {
				clashes++;
				Map<String, Integer> few = known(base, family, clash.readings());
				assertFalse(all.keySet().stream().anyMatch(other -> covers(other, few)), label + " " + clash);
			});
		}
	}

	private static boolean covers(Sit sit, Map<String, Integer> known) {
		return sit.known().entrySet().containsAll(known.entrySet());
	}

	private void compare(String label, Advice advice, RuleBase base, Enumeration enumeration, Sit sit,
			Map<Sit, Enumeration.Result> all) {
		assertEquals(List.of(), advice.clashes(), label);
		Enumeration.Result now = all.get(sit);
		assertEquals(new TreeSet<>(now.verdicts()), advice.verdicts().stream().map(derived -> derived.verdict().isReferral()
				? "REFERS " + derived.verdict().fault()
				: derived.verdict().kind() + " " + derived.verdict().fault()).collect(Collectors.toCollection(TreeSet::new)),
				label);
		List<Map.Entry<Sit, Enumeration.Result>> later = all.entrySet().stream()
				.filter(other -> covers(other.getKey(), sit.known())).toList();
		for (Standing rule : advice.rules()) {
			seen.merge(rule.state(), 1, Integer::sum);
			Set<Integer> fired = outcomes(rule.rule(), List.of(now));
			assertEquals(fired, new TreeSet<>(rule.fired()), label + rule);
			Set<Integer> possible = outcomes(rule.rule(), later.stream().map(Map.Entry::getValue).toList());
			State expected = !fired.isEmpty() ? State.FIRED : possible.isEmpty() ? State.NEVER : State.OPEN;
			assertEquals(expected, rule.state(), label + rule);
			if (expected == State.OPEN) {
				assertEquals(possible, new TreeSet<>(rule.possible()), label + rule);
				assertFalse(rule.needs().isEmpty(), label + rule);
				assertTrue(rule.needs().stream().noneMatch(need -> need.open().isEmpty() && need.verdicts().isEmpty()),
						label + rule);
			} else if (expected == State.NEVER) {
				checkReason(label + rule, base, enumeration, sit, rule, all);
			}
		}
	}

	private void checkReason(String label, RuleBase base, Enumeration enumeration, Sit sit, Standing rule,
			Map<Sit, Enumeration.Result> all) {
		List<Demand> demands = rule.obstacle().demands();
		List<Reading> readings = rule.obstacle().readings();
		assertFalse(demands.isEmpty(), label);
		assertTrue(readings(base, sit).containsAll(readings), label);
		assertFalse(anyHolds(demands, readings, base, enumeration, sit.family(), all), label);
		for (Reading left : readings) {
			minimal++;
			List<Reading> fewer = readings.stream().filter(reading -> reading != left).toList();
			assertTrue(anyHolds(demands, fewer, base, enumeration, sit.family(), all), label + " without " + left);
		}
		for (Demand left : demands) {
			List<Demand> fewer = demands.stream().filter(demand -> demand != left).toList();
			assertTrue(anyHolds(fewer, readings(base, sit), base, enumeration, sit.family(), all), label + " without " + left);
		}
	}

	/** Returns whether all demands hold in some situation with the readings; a demand on a test asks for any outcome. */
	private static boolean anyHolds(List<Demand> demands, List<Reading> readings, RuleBase base, Enumeration enumeration,
			String family, Map<Sit, Enumeration.Result> all) {
		Map<String, Integer> known = known(base, family, readings);
		return all.entrySet().stream().filter(entry -> covers(entry.getKey(), known)).anyMatch(entry -> demands.stream()
				.allMatch(demand -> enumeration.holds(demand.condition(), entry.getKey(), entry.getValue().verdicts())));
	}

	private static Set<Integer> outcomes(String rule, Collection<Enumeration.Result> results) {
		Set<Integer> outcomes = new TreeSet<>();
		results.forEach(result -> result.fired().stream().filter(fired -> fired.startsWith(rule + "/"))
				.forEach(fired -> outcomes.add(Integer.valueOf(fired.substring(rule.length() + 1)))));
		return outcomes;
	}

	/** Returns some findings that need not go together; all traits are told. */
	private static Sit anything(Enumeration enumeration, String family, Random random) {
		Map<String, Integer> known = new HashMap<>();
		enumeration.variables(family).forEach((variable, size) -> {
			if (variable.startsWith("trait ") || random.nextInt(3) > 0) {
				known.put(variable, random.nextInt(size));
			}
		});
		return new Sit(family, known);
	}

	// ---- readings and situations -------------------------------------------------------------------------------

	private static List<Reading> readings(RuleBase base, Sit sit) {
		List<Reading> readings = new ArrayList<>();
		sit.known().entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(entry -> {
			String[] variable = entry.getKey().split(" ");
			int value = entry.getValue();
			readings.add(switch (variable[0]) {
			case "sign" -> new Reading.SignSeen(variable[1], value == 0, Span.NONE);
			case "module" -> new Reading.ModuleAsked(variable[1], value == 0, Span.NONE);
			case "code" -> new Reading.CodeRead(variable[1], CodeReading.values()[value], Span.NONE);
			default -> value(domain(base, sit.family(), entry.getKey()), variable[1], value);
			});
		});
		return readings;
	}

	private static Domain domain(RuleBase base, String family, String variable) {
		String name = variable.substring(variable.indexOf(' ') + 1);
		return variable.startsWith("test ") ? base.test(name).orElseThrow().domain()
				: base.traitsOf(family).get(name).domain();
	}

	private static Reading value(Domain domain, String name, int value) {
		return domain instanceof Domain.Quantity quantity
				? new Reading.Measured(name, quantity.value(value), Span.NONE)
				: new Reading.Named(name, ((Domain.Names) domain).values().get(value).name(), Span.NONE);
	}

	/** Returns what the readings say, also of the codes of a silent module and of the module of a code. */
	private static Map<String, Integer> known(RuleBase base, String family, List<Reading> readings) {
		Map<String, Integer> known = new HashMap<>();
		for (Reading reading : readings) {
			if (reading instanceof Reading.SignSeen seen) {
				known.put("sign " + seen.subject(), seen.present() ? 0 : 1);
			} else if (reading instanceof Reading.ModuleAsked asked) {
				known.put("module " + asked.subject(), asked.answers() ? 0 : 1);
			} else if (reading instanceof Reading.CodeRead read) {
				known.put("code " + read.subject(), read.reading().ordinal());
			} else {
				String variable = (base.test(reading.subject()).isPresent() ? "test " : "trait ") + reading.subject();
				Domain domain = domain(base, family, variable);
				known.put(variable, reading instanceof Reading.Measured measured
						? ((Domain.Quantity) domain).floorIndex(measured.value())
						: ((Domain.Names) domain).indexOf(((Reading.Named) reading).value()));
			}
		}
		for (Code code : base.codes()) {
			Integer reading = known.get("code " + code.name());
			Integer module = known.get("module " + code.module());
			if (reading != null && module == null) {
				known.put("module " + code.module(), reading == 2 ? 1 : 0);
			} else if (reading == null && module != null && module == 1) {
				known.put("code " + code.name(), 2);
			}
		}
		return known;
	}
}
