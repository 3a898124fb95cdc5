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
import org.baywright.analysis.run.Consultations;
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
	private int halfTold;

	@ParameterizedTest(name = "{0} bases of {5} rules, {6} laws, absence {7}, loops {8}, seed {9}")
	@CsvSource({ "60, 1, 2, 1, 3, 5, 0, true, false, 11", //
			"60, 1, 1, 2, 3, 6, 2, true, false, 12", //
			"60, 2, 2, 1, 3, 6, 2, false, true, 13" })
	void saysWhatAllSituationsSay(int count, int families, int signs, int tests, int faults, int rules, int laws,
			boolean absence, boolean loops, long seed) {
		RandomBases.Shape shape = new RandomBases.Shape(families, signs, tests, faults, rules, laws, absence, loops);
		for (int i = 0; i < count; i++) {
			RuleBase base = new RandomBases(seed * 100_000 + i, shape).states(i % 2 == 0).next();
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
		assertTrue(halfTold > 0, "codes whose state nobody told should be seen: " + halfTold);
		assertTrue(minimal > count / 2, "reasons with findings should be seen often: " + minimal);
	}

	private void examine(String label, RuleBase base, Enumeration enumeration, String family, Random random) {
		Map<Sit, Enumeration.Result> all = new HashMap<>();
		enumeration.all(family).forEach(sit -> all.put(sit, enumeration.derive(sit, null)));
		Consultation consultation = Consultations.of(base, family);
		List<Sit> sits = new ArrayList<>(all.keySet());
		sits.sort(Comparator.comparing(sit -> sit.known().entrySet().stream().sorted(Map.Entry.comparingByKey())
				.toList().toString()));
		for (int look = 0; look < LOOKS && !sits.isEmpty(); look++) {
			Sit sit = sits.get(random.nextInt(sits.size()));
			compare(label + " " + sit, consultation.advise(readings(base, sit), Listener.NONE), base, enumeration, sit, all);
			Sit half = halfTold(base, sit);
			if (half != sit) {
				halfTold++;
				compare(label + " " + half, consultation.advise(readings(base, half), Listener.NONE), base, enumeration, half, all);
			}
		}
		for (int look = 0; look < LOOKS; look++) {
			Sit sit = anything(enumeration, family, random);
			Advice advice = consultation.advise(readings(base, sit), Listener.NONE);
			boolean can = all.keySet().stream().anyMatch(other -> covers(base, other, sit.known()));
			assertEquals(can, advice.clashes().isEmpty(), label + " " + sit + advice.clashes());
			advice.clashes().forEach(clash -> {
				clashes++;
				Map<String, Integer> few = known(base, family, clash.readings());
				assertFalse(all.keySet().stream().anyMatch(other -> covers(base, other, few)), label + " " + clash);
			});
		}
	}

	/** Returns whether a situation has all that is known; of a present code whose state nobody told it has any state. */
	private static boolean covers(RuleBase base, Sit sit, Map<String, Integer> known) {
		return known.entrySet().stream().allMatch(entry -> {
			Integer value = sit.known().get(entry.getKey());
			boolean anyState = entry.getValue() == 0 && hasStates(base, entry.getKey());
			return anyState ? value != null && CodeReading.OF_PRESENT.contains(CodeReading.values()[value]) : entry.getValue().equals(value);
		});
	}

	private static boolean hasStates(RuleBase base, String variable) {
		return variable.startsWith("code ") && base.asksForState(variable.substring(5));
	}

	/** Returns the situation as somebody tells it who reads no states; the same one if there is none in it. */
	private static Sit halfTold(RuleBase base, Sit sit) {
		Map<String, Integer> known = new HashMap<>(sit.known());
		known.replaceAll((variable, value) -> hasStates(base, variable) && CodeReading.OF_PRESENT.contains(CodeReading.values()[value]) ? 0 : value);
		return known.equals(sit.known()) ? sit : new Sit(sit.family(), known);
	}

	private void compare(String label, Advice advice, RuleBase base, Enumeration enumeration, Sit sit,
			Map<Sit, Enumeration.Result> all) {
		assertEquals(List.of(), advice.clashes(), label);
		Enumeration.Result now = all.containsKey(sit) ? all.get(sit) : enumeration.derive(sit, null);
		assertEquals(new TreeSet<>(now.verdicts()), advice.verdicts().stream().map(derived -> derived.verdict().isReferral()
				? "REFERS " + derived.verdict().fault()
				: derived.verdict().kind() + " " + derived.verdict().fault()).collect(Collectors.toCollection(TreeSet::new)),
				label);
		List<Map.Entry<Sit, Enumeration.Result>> later = all.entrySet().stream()
				.filter(other -> covers(base, other.getKey(), sit.known())).toList();
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
		return all.entrySet().stream().filter(entry -> covers(base, entry.getKey(), known)).anyMatch(entry -> demands.stream()
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
