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
import org.baywright.model.Module;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.StateSetting;
import org.baywright.model.VerifyStep;

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
	 */
	record Expectation(VerifyStep.Expect step, String module, Optional<String> read, boolean cleared, boolean cycled) {
	}

	/** A step that talks to a module in a state in which the module need not answer. */
	record Unanswered(VerifyStep step, String module, List<StateSetting> answersIn) {
	}

	private final RuleBase base;
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
	private Optional<String> lastRead = Optional.empty();

	Verification(RuleBase base, Repair repair) {
		this.base = base;
		repair.verify().forEach(this::walk);
	}

	private void walk(VerifyStep step) {
		if (step instanceof VerifyStep.Put put) {
			states.put(put.setting().state(), put.setting().value());
		} else if (step instanceof VerifyStep.Clear clear) {
			talk(step, clear.module());
			cleared.add(clear.module());
			cycledSince.remove(clear.module());
		} else if (step instanceof VerifyStep.Cycle) {
			cycledSince.addAll(cleared);
		} else if (step instanceof VerifyStep.Read read) {
			talk(step, read.module());
			lastRead = Optional.of(read.module());
			if (cycledSince.contains(read.module())) {
				readAfterCycle.add(read.module());
			} else {
				readAfterCycle.remove(read.module());
			}
		} else if (step instanceof VerifyStep.Expect expect) {
			String module = base.code(expect.code()).map(Code::module).orElse("");
			expectations.add(new Expectation(expect, module, lastRead, cleared.contains(module),
					readAfterCycle.contains(module)));
			expectedLast.put(expect.code(), expect);
			if (!expect.present()) {
				seenAbsent.add(expect.code());
			}
		} else if (step instanceof VerifyStep.Repeat repeat) {
			repeated.add(repeat.test());
			if (repeat.values().isPresent()) {
				expectedLast.put(repeat.test(), repeat);
			}
			base.test(repeat.test())
					.ifPresent(test -> test.states().forEach(state -> states.put(state.state(), state.value())));
		} else {
			repeatsWhatConfirmed = true;
		}
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

	/** Adds the places of all steps but the first to a finding. */
	static Checked.Draftsman places(List<Expectation> expectations, Checked.Draftsman finding) {
		expectations.stream().skip(1).forEach(expected -> finding.near(expected.step().span(), "code " + expected.step().code()));
		return finding;
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
