package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

import org.baywright.analysis.proof.Checked;
import org.baywright.model.Code;
import org.baywright.model.Cycle;
import org.baywright.model.Family;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Preparation;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.StateSetting;
import org.baywright.model.VerifyStep;
import org.baywright.model.words.Telling;

/** Walks through the verification of a repair and notes what each step can prove: the common part of several checks. */
final class Verification {

	/**
	 * A step that expects a code.
	 *
	 * @param step the step
	 * @param module the module that holds the code
	 * @param read the module read last before the step, if any
	 * @param cleared whether the code's module was cleared before
	 * @param cycled whether a state was cycled after that and before the reading
	 * @param lacking what the code's own test needs and did not get between clearing and reading, in words
	 */
	record Expectation(VerifyStep.Expect step, String module, Optional<String> read, boolean cleared, boolean cycled,
			List<String> lacking) {

		/** Returns whether the module that holds the code is the one that was read. */
		boolean readsItsModule() {
			return read.filter(module::equals).isPresent();
		}
	}

	/** A step that talks to a module in a state in which the module need not answer. */
	record Unanswered(VerifyStep step, String module, List<StateSetting> answersIn) {
	}

	private final RuleBase base;
	private final Repair repair;
	private final List<Expectation> expectations = new ArrayList<>();
	private final List<Unanswered> unanswered = new ArrayList<>();
	private final Set<String> repeated = new HashSet<>();
	private final Set<String> seenAbsent = new HashSet<>();
	private final Map<String, VerifyStep> expectedLast = new TreeMap<>();
	private boolean repeatsWhatConfirmed;

	private final Map<String, String> states = new HashMap<>();
	private final Set<String> cleared = new HashSet<>();
	private final Set<String> cycledSince = new HashSet<>();
	private final Set<String> readAfterCycle = new HashSet<>();
	/** What was done since a module was cleared, and the same when it was read last. */
	private final Map<String, Since> since = new HashMap<>();
	private final Map<String, Since> sinceAtReading = new HashMap<>();
	private Optional<String> lastRead = Optional.empty();

	Verification(RuleBase base, Repair repair) {
		this.base = base;
		this.repair = repair;
		repair.verify().forEach(this::walk);
	}

	/** What was done since a module was cleared: the states that the vehicle was in, the drives and the waits. */
	private record Since(Set<StateSetting> states, List<Preparation> done) {

		Since copy() {
			return new Since(new HashSet<>(states), new ArrayList<>(done));
		}

		List<String> lacks(RuleBase base, Code code) {
			List<String> lacking = new ArrayList<>();
			code.runsIn().stream().collect(Collectors.groupingBy(StateSetting::state, LinkedHashMap::new, Collectors.toList()))
					.values().stream().filter(any -> any.stream().noneMatch(states::contains))
					.forEach(any -> lacking.add(any.stream().map(StateSetting::toString).collect(Collectors.joining(" or "))));
			code.runsAfter().stream().filter(asked -> done.stream().noneMatch(made -> made.covers(asked)))
					.forEach(asked -> lacking.add("“" + Telling.preparation(asked) + "”"));
			return lacking;
		}
	}

	private void put(StateSetting setting) {
		states.put(setting.state(), setting.value());
		since.values().forEach(done -> done.states().add(setting));
	}

	/** Families may mean unlike things by a cycle: what counts is what the state goes through in all of them. */
	private void cycle(String state) {
		List<String> through = null;
		Set<String> ends = new HashSet<>();
		for (Family family : base.vehicleFamilies().stream().filter(each -> base.reaches(repair.scope(), each.name())).toList()) {
			Optional<Cycle> cycle = base.cycle(family.name(), state);
			List<String> values = cycle.map(Cycle::values).orElseGet(() -> base.state(state).stream()
					.flatMap(found -> found.values().stream()).map(NamedValue::name).toList());
			if (through == null) {
				through = new ArrayList<>(values);
			} else {
				through.retainAll(values);
			}
			ends.add(cycle.map(said -> values.get(values.size() - 1)).orElse(states.getOrDefault(state, "")));
		}
		if (through != null) {
			through.forEach(value -> since.values().forEach(done -> done.states().add(new StateSetting(state, value))));
		}
		if (ends.size() == 1 && !ends.contains("")) {
			states.put(state, ends.iterator().next());
		} else {
			states.remove(state);
		}
	}

	private void walk(VerifyStep step) {
		step.visit(
				this::clear,
				(VerifyStep.Cycle cycle) -> {
					cycledSince.addAll(cleared);
					cycle(cycle.state());
				},
				(VerifyStep.Put put) -> put(put.setting()),
				this::read,
				this::expect,
				(VerifyStep.ExpectSign expect) -> { },
				(VerifyStep.Prepare prepare) -> since.values().forEach(done -> done.done().add(prepare.preparation())),
				this::repeat,
				(VerifyStep.RepeatWhatConfirmed repeat) -> repeatsWhatConfirmed = true);
	}

	private void clear(VerifyStep.Clear clear) {
		talk(clear, clear.module());
		cleared.add(clear.module());
		cycledSince.remove(clear.module());
		Set<StateSetting> now = new HashSet<>();
		states.forEach((state, value) -> now.add(new StateSetting(state, value)));
		since.put(clear.module(), new Since(now, new ArrayList<>()));
	}

	private void read(VerifyStep.Read read) {
		talk(read, read.module());
		lastRead = Optional.of(read.module());
		if (since.containsKey(read.module())) {
			sinceAtReading.put(read.module(), since.get(read.module()).copy());
		}
		if (cycledSince.contains(read.module())) {
			readAfterCycle.add(read.module());
		} else {
			readAfterCycle.remove(read.module());
		}
	}

	private void expect(VerifyStep.Expect expect) {
		String module = base.code(expect.code()).map(Code::module).orElse("");
		expectations.add(new Expectation(expect, module, lastRead, cleared.contains(module),
				readAfterCycle.contains(module), base.code(expect.code()).filter(code -> sinceAtReading.containsKey(module))
						.map(code -> sinceAtReading.get(module).lacks(base, code)).orElse(List.of())));
		expectedLast.put(expect.code(), expect);
		if (!expect.present()) {
			seenAbsent.add(expect.code());
		}
	}

	private void repeat(VerifyStep.Repeat repeat) {
		repeated.add(repeat.test());
		if (repeat.values().isPresent()) {
			expectedLast.put(repeat.test(), repeat);
		}
		base.test(repeat.test()).map(base::doneBy).ifPresent(test -> {
			test.states().forEach(this::put);
			since.values().forEach(done -> done.done().addAll(test.prepare()));
		});
	}

	private void talk(VerifyStep step, String module) {
		List<StateSetting> answersIn = base.module(module).map(Module::answersIn).orElse(List.of());
		if (!answersIn.isEmpty()
				&& answersIn.stream().noneMatch(state -> state.value().equals(states.get(state.state())))) {
			unanswered.add(new Unanswered(step, module, answersIn));
		}
	}

	/** Returns the expectations that something is wrong with, in groups that one thing is told of: in their order. */
	Collection<List<Expectation>> wrong(Predicate<Expectation> isWrong, Function<Expectation, Object> cause) {
		return expectations.stream().filter(isWrong)
				.collect(Collectors.groupingBy(expected -> List.of(expected.module(), cause.apply(expected)), LinkedHashMap::new, Collectors.toList()))
				.values();
	}

	/** Returns the codes that the steps expect something of, each once. */
	static List<String> codes(List<Expectation> expectations) {
		return expectations.stream().map(expected -> expected.step().code()).distinct().toList();
	}

	/** Adds the places of all steps but the first to a flaw. */
	static Checked.Draftsman places(List<Expectation> expectations, Checked.Draftsman flaw) {
		expectations.stream().skip(1).forEach(expected -> flaw.near(expected.step().span(), "code " + expected.step().code()));
		return flaw;
	}

	/** Returns for each test and code, by name, the last step that expects something of it: what must be so in the end. */
	Map<String, VerifyStep> expectedLast() {
		return expectedLast;
	}

	List<Unanswered> unanswered() {
		return unanswered;
	}

	/** Returns whether the test is done again. */
	boolean repeats(String test) {
		return repeatsWhatConfirmed || repeated.contains(test);
	}

	/** Returns whether the code is looked for again and must be gone. */
	boolean looksAgainFor(String code) {
		return repeatsWhatConfirmed || seenAbsent.contains(code);
	}
}
