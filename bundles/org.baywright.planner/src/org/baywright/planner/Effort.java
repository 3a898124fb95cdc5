package org.baywright.planner;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.Module;
import org.baywright.model.Preparation;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Skill;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.Workshop;

/** What it takes to make findings, in the project's own money: minutes at a rate, and the price with that of the tools. */
final class Effort {

	/** What a minute costs where the workshop says nothing: then money counts like minutes. */
	private static final double RATE = 1;
	/** Minutes of a test of which nobody says how long it takes. */
	private static final double TEST = 5;
	/** Minutes of reading a module of which nobody says how long it takes. */
	private static final double MODULE = 3;
	/** Minutes of asking or looking for a sign. */
	private static final double SIGN = 1;
	/** What a minute in which the vehicle only stands and waits counts beside one of work: somebody works on another one meanwhile. */
	private static final double WAITING = 0.05;
	/** What it counts after the first hour: the vehicle takes a place, its driver does without it, and all that follows comes later. */
	private static final double STANDING = 0.2;
	private static final int MINUTES_PER_HOUR = 60;

	private final RuleBase base;
	private final double rate;
	private final Optional<Workshop> workshop;
	private final List<Doing> doings = new ArrayList<>();
	/** For each finding its doing. */
	private final Doing[] doingOf;
	/** For each finding the number of its doing; what one scan can read has one number. */
	private final int[] together;
	private final boolean[] mayFollow;
	private final List<Variable> findings;
	private final Optional<Doing> scan;

	/** Something that is done once and shows one finding or several. */
	record Doing(int number, boolean reads, double minutes, double waiting, double price, List<StateSetting> states, boolean anyState, boolean atHand, boolean paid, int[] findings,
			int[] disturbs, int[] touches) {

		private double cost(double rate) {
			double first = Math.min(waiting, MINUTES_PER_HOUR);
			return price + rate * (minutes + WAITING * first + STANDING * (waiting - first));
		}
	}

	/** @param readings what was found before: who did what shows it need not do that again */
	Effort(RuleBase base, Prospect.Ahead ahead, List<Reading> readings) {
		this.base = base;
		workshop = base.workshop();
		rate = workshop.flatMap(Workshop::hour).map(hour -> hour.doubleValue() / MINUTES_PER_HOUR).orElse(RATE);
		findings = ahead.findings();
		Map<Object, List<Integer>> shown = new LinkedHashMap<>();
		for (int finding = 0; finding < findings.size(); finding++) {
			shown.computeIfAbsent(key(findings.get(finding)), key -> new ArrayList<>()).add(finding);
		}
		doingOf = new Doing[findings.size()];
		together = new int[findings.size()];
		mayFollow = new boolean[findings.size()];
		Set<Object> done = readings.stream().map(reading -> key(Variable.of(base, reading))).collect(Collectors.toSet());
		boolean scans = workshop.flatMap(Workshop::all).isPresent();
		for (Map.Entry<Object, List<Integer>> entry : shown.entrySet()) {
			Doing doing = doing(entry.getKey(), done.contains(entry.getKey()), entry.getValue().stream().mapToInt(Integer::intValue).toArray());
			doings.add(doing);
			for (int finding : doing.findings()) {
				doingOf[finding] = doing;
				together[finding] = scans && doing.reads() ? -1 : doing.number();
				Variable.Kind kind = findings.get(finding).kind();
				mayFollow[finding] = (ahead.isTied(finding) || ahead.known().possible(finding).length == 1) && (kind == Variable.Kind.SIGN || kind == Variable.Kind.TRAIT);
			}
		}
		scan = scanOfAll();
	}

	private Object key(Variable finding) {
		return switch (finding.kind()) {
		case TEST -> base.test(finding.name()).map(base::doneBy).<Object>map(test -> test).orElse(finding);
		case MODULE, CODE -> module(finding).<Object>map(module -> module).orElse(finding);
		default -> finding;
		};
	}

	private Doing doing(Object key, boolean paid, int[] shows) {
		if (key instanceof Test test) {
			double waiting = test.prepare().stream().mapToDouble(Effort::waiting).sum();
			double takes = given(test.takes(), TEST);
			int[] disturbs = test.spoils(base).stream().mapToInt(this::numberOf).filter(number -> number >= 0).toArray();
			int[] touches = test.disturbs().stream().mapToInt(this::numberOf).filter(number -> number >= 0).toArray();
			// who says that the test takes longer than it waits has the waiting in it
			return new Doing(doings.size(), false, takes > waiting ? takes - waiting : takes, waiting, test.cost(base).doubleValue(), test.states(), false,
					isAtHand(test.tools(), test.skill()), paid, shows, disturbs, touches);
		} else if (key instanceof Module module) {
			Workshop.Scan scan = base.scan(module);
			return new Doing(doings.size(), true, given(scan.takes(), MODULE), 0, scan.cost(base).doubleValue(), module.answersIn(), true,
					isAtHand(scan.tools(), Skill.BASIC), paid, shows, new int[0], new int[0]);
		}
		return new Doing(doings.size(), false, SIGN, 0, 0, List.of(), false, true, false, shows, new int[0], new int[0]);
	}

	private int numberOf(String name) {
		return IntStream.range(0, findings.size()).filter(finding -> findings.get(finding).name().equals(name)).findFirst().orElse(-1);
	}

	private static double waiting(Preparation preparation) {
		return preparation instanceof Preparation.Wait wait ? wait.minutes().doubleValue() : 0;
	}

	private static double given(BigDecimal minutes, double otherwise) {
		return minutes.signum() > 0 ? minutes.doubleValue() : otherwise;
	}

	private boolean isAtHand(List<String> tools, Skill skill) {
		return workshop.map(shop -> tools.stream().noneMatch(shop.lacks()::contains) && shop.skill().map(best -> skill.compareTo(best) <= 0).orElse(true)).orElse(true);
	}

	private Optional<Module> module(Variable finding) {
		return switch (finding.kind()) {
		case CODE -> base.code(finding.name()).map(Code::module).flatMap(base::module);
		case MODULE -> base.module(finding.name());
		default -> Optional.empty();
		};
	}

	// ---- what is asked ---------------------------------------------------------------------------------------

	Doing doing(int finding) {
		return doingOf[finding];
	}

	double rate() {
		return rate;
	}

	/** Returns what reading all modules at once takes, if the workshop can. */
	Optional<Doing> scan() {
		return scan;
	}

	private Optional<Doing> scanOfAll() {
		return workshop.flatMap(Workshop::all).filter(scan -> isAtHand(scan.tools(), Skill.BASIC))
				.map(scan -> new Doing(-1, true, given(scan.takes(), MODULE), 0, scan.cost(base).doubleValue(), List.of(), false, true, false,
						IntStream.range(0, doingOf.length).filter(finding -> doingOf[finding].reads()).toArray(), new int[0], new int[0]));
	}

	/** Returns the minutes of work and the price of a doing, without changing the state of the vehicle. */
	double cost(Doing doing) {
		return doing.cost(rate);
	}

	/** Who asks a module has all its codes, and who does a test sees what is seen with it. */
	boolean isPaid(int finding, Prospect.Known known) {
		if (doingOf[finding].paid()) {
			return true;
		}
		for (int other : doingOf[finding].findings()) {
			if (known.isMade(other)) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether a finding is a sign or a trait that may have only one value, by itself or as others leave no other, so that nobody has to look. */
	boolean mayFollow(int finding) {
		return mayFollow[finding];
	}

	/** Returns what each finding costs at least where some are made already. */
	double[] least(Prospect.Known known, boolean scanned) {
		double all = scan.map(this::cost).orElse(Double.POSITIVE_INFINITY);
		return IntStream.range(0, doingOf.length).mapToDouble(finding -> isPaid(finding, known) || scanned && doingOf[finding].reads() || mayFollow[finding] ? 0
				: doingOf[finding].reads() ? Math.min(all, cost(doingOf[finding])) : cost(doingOf[finding])).toArray();
	}

	/** Returns for each finding the number of the doing that shows it; what one scan can read has one number. */
	int[] together() {
		return together;
	}

	/** Returns what these cost together where some are made already. */
	double of(int[] asked, Prospect.Known known) {
		Map<Integer, Double> dearest = new HashMap<>();
		Arrays.stream(asked).filter(finding -> !isPaid(finding, known)).forEach(finding -> dearest.put(doingOf[finding].number(), cost(doingOf[finding]) + rate * longest(doingOf[finding])));
		return dearest.values().stream().mapToDouble(Double::doubleValue).sum();
	}

	/** Returns the minutes that putting the vehicle into the state of a doing takes at most. */
	private double longest(Doing doing) {
		return doing.states().stream().mapToDouble(this::minutesTo).sum();
	}

	double minutesTo(StateSetting setting) {
		return base.state(setting.state()).flatMap(state -> state.minutesTo(setting.value())).map(BigDecimal::doubleValue).orElse(0.0);
	}

	/** Returns the minutes that putting the vehicle into the state of a doing takes, from a known state. */
	double minutesTo(Doing doing, Map<String, String> now) {
		if (doing.anyState()) {
			return doing.states().isEmpty() || doing.states().stream().anyMatch(setting -> isSo(setting, now)) ? 0
					: doing.states().stream().mapToDouble(this::minutesTo).min().orElse(0);
		}
		return doing.states().stream().filter(setting -> !isSo(setting, now)).mapToDouble(this::minutesTo).sum();
	}

	private static boolean isSo(StateSetting setting, Map<String, String> now) {
		return setting.value().equals(now.get(setting.state()));
	}

	/** Returns the state of the vehicle after a doing, as far as it took minutes to get there. */
	Map<String, String> after(Doing doing, Map<String, String> now) {
		List<StateSetting> set = doing.anyState() ? doing.states().stream().filter(setting -> isSo(setting, now)).findFirst().or(() -> doing.states().stream()
				.min((a, b) -> Double.compare(minutesTo(a), minutesTo(b)))).map(List::of).orElse(List.of()) : doing.states();
		if (set.stream().allMatch(setting -> isSo(setting, now) || !counts(setting.state()))) {
			return now;
		}
		Map<String, String> after = new TreeMap<>(now);
		set.stream().filter(setting -> counts(setting.state())).forEach(setting -> after.put(setting.state(), setting.value()));
		return after;
	}

	/** Returns whether getting to some value of a state takes time, so that it matters where one is. */
	private boolean counts(String state) {
		return base.state(state).stream().anyMatch(found -> found.minutes().values().stream().anyMatch(minutes -> minutes.signum() > 0));
	}
}
