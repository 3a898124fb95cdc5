package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Variable;
import org.baywright.model.CodeReading;
import org.baywright.model.Fault;
import org.baywright.model.Notice;
import org.baywright.model.Reading;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.StateSetting;
import org.baywright.model.ValueSet;
import org.baywright.model.VerifyStep;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;
import org.baywright.presenter.bench.Check.Verdict;
import org.baywright.presenter.bench.Progress.Tick;

/** Makes what is shown of one repair on one vehicle. */
final class WorkMaker {

	private final Bench bench;
	private final RuleBase base;
	private final Repair repair;
	private final List<String> faults;
	private final Words words;
	private final Telling telling;
	private final Subjects subjects;
	private final Progress progress;
	private final WhatConfirmed confirmed;
	private final Set<Variable> asked = new HashSet<>();
	private final boolean repeatsAll;
	private final List<Check> checks = new ArrayList<>();

	/** @param faults those of the vehicle that the repair puts right */
	WorkMaker(Bench bench, Advice advice, Repair repair, List<String> faults) {
		this.bench = bench;
		this.repair = repair;
		this.faults = faults;
		base = bench.base();
		words = new Words(base);
		telling = new Telling(base);
		subjects = new Subjects(base, bench.now().family());
		progress = bench.now().done().progress(repair.name());
		confirmed = new WhatConfirmed(bench, advice, faults);
		repair.verify().forEach(step -> variable(step).ifPresent(asked::add));
		repeatsAll = repair.verify().stream().anyMatch(VerifyStep.RepeatWhatConfirmed.class::isInstance);
	}

	Work work() {
		List<Work.Step> steps = new ArrayList<>();
		for (int i = 0; i < repair.steps().size(); i++) {
			steps.add(new Work.Step(repair.steps().get(i), progress.isTicked(Tick.STEP, i)));
		}
		List<Work.Told> notices = new ArrayList<>();
		for (int i = 0; i < repair.notices().size(); i++) {
			Notice notice = repair.notices().get(i);
			notices.add(new Work.Told(notice.whom(), notice.text(), notice.why(), progress.isTicked(Tick.TOLD, i)));
		}
		verification();
		return new Work(repair.name(), repair.title(), repair.span(), faults, Caution.of(base, hazards()), repair.place().orElse(""), pictures(),
				repair.tools().stream().map(words::tool).toList(), repair.takes(), repair.cost(base), Telling.skill(repair.skill()), steps, notices,
				repair.changesForGood(), checks, restsOn());
	}

	/** The verification can hurt too: by what is measured, and by the state that it is measured in. */
	private Set<String> hazards() {
		Set<String> hazards = new LinkedHashSet<>(repair.hazards(base));
		checks.stream().flatMap(check -> check.at().variable().stream()).filter(variable -> variable.kind() == Variable.Kind.TEST).flatMap(variable -> base.test(variable.name()).stream())
				.forEach(test -> hazards.addAll(test.hazards(base)));
		for (VerifyStep step : repair.verify()) {
			if (step instanceof VerifyStep.Put put) {
				// what each test in that state warns of comes with the state
				base.tests().stream().filter(test -> base.doneBy(test).states().stream().anyMatch(set -> isSame(set, put.setting()))).map(test -> test.hazards(base))
						.reduce((one, other) -> one.stream().filter(other::contains).collect(Collectors.toSet())).ifPresent(all -> all.stream().sorted().forEach(hazards::add));
			}
		}
		return hazards;
	}

	private static boolean isSame(StateSetting one, StateSetting other) {
		return one.state().equals(other.state()) && one.value().equals(other.value());
	}

	/** Nothing that was measured on a part tells of it after work on it. */
	private Set<Variable> restsOn() {
		Set<Variable> rest = new HashSet<>(confirmed.rest());
		Set<String> parts = faults.stream().flatMap(fault -> base.fault(fault).stream()).map(Fault::part).collect(Collectors.toSet());
		base.tests().stream().filter(test -> test.part(base).filter(parts::contains).isPresent()).forEach(test -> rest.add(new Variable(Variable.Kind.TEST, test.name())));
		// what is wrong with the vehicle is asked for in the verification, and stands as long as nobody says otherwise
		rest.removeIf(variable -> variable.kind() == Variable.Kind.SIGN || variable.kind() == Variable.Kind.TRAIT);
		return rest;
	}

	private List<Link> pictures() {
		return repair.pictures().stream().map(picture -> new Link("Picture: " + picture.words(), new Span(picture.file(), 1, 1, 1, 1, 0, 0))).toList();
	}

	// ---- verification ----------------------------------------------------------------------------------------------

	private void verification() {
		for (int i = 0; i < repair.verify().size(); i++) {
			VerifyStep step = repair.verify().get(i);
			if (step instanceof VerifyStep.RepeatWhatConfirmed) {
				repeatWhatConfirmed(i, step);
			} else {
				Optional<Variable> variable = variable(step);
				if (variable.isEmpty()) {
					tick(i, telling.step(step, bench.now().family()));
				}
				At at = new At(i, variable);
				// what is expected stands beside it; what vehicles of this family cannot have is not looked at
				variable.flatMap(subjects::subject).ifPresent(subject -> read(at, again(subject) + ".", subject, Optional.of(step)));
			}
		}
		if (checks.isEmpty()) {
			complaintIsGone();
		}
	}

	/** What another step asks for by itself is not asked for twice. */
	private void repeatWhatConfirmed(int number, VerifyStep step) {
		List<Variable> rest = confirmed.rest();
		rest.stream().filter(variable -> !asked.contains(variable)).flatMap(variable -> subjects.subject(variable).stream())
				.forEach(subject -> read(new At(number, Optional.of(subject.variable())), again(subject) + ", which confirmed the fault.", subject,
						Optional.empty()));
		if (rest.isEmpty()) {
			tick(number, telling.step(step));
		}
	}

	/** Nobody says how it is verified, so what the customer came for has to be gone. */
	private void complaintIsGone() {
		bench.now().readings().stream().filter(reading -> reading instanceof Reading.SignSeen seen && seen.present())
				.flatMap(reading -> subjects.subject(Variable.of(base, reading)).stream())
				.forEach(subject -> read(new At(0, Optional.of(subject.variable())), "The rules do not say how this is verified. " + again(subject) + ".", subject,
						Optional.of(new VerifyStep.ExpectSign(subject.variable().name(), false, 0, Span.NONE))));
	}

	private static String again(Subject subject) {
		return switch (subject.variable().kind()) {
		case SIGN -> "Look again for “" + subject.title() + "”";
		case MODULE -> "Ask again: " + subject.title();
		case CODE -> "Read again: code " + subject.title();
		case TEST, TRAIT -> "Repeat: " + subject.title();
		};
	}

	private static Optional<Variable> variable(VerifyStep step) {
		return step.match(
				(VerifyStep.Clear clear) -> Optional.empty(),
				(VerifyStep.Cycle cycle) -> Optional.empty(),
				(VerifyStep.Put put) -> Optional.empty(),
				(VerifyStep.Read read) -> Optional.empty(),
				(VerifyStep.Expect expect) -> Optional.of(new Variable(Variable.Kind.CODE, expect.code())),
				(VerifyStep.ExpectSign expect) -> Optional.of(new Variable(Variable.Kind.SIGN, expect.sign())),
				(VerifyStep.Prepare prepare) -> Optional.empty(),
				(VerifyStep.Repeat repeat) -> Optional.of(new Variable(Variable.Kind.TEST, repeat.test())),
				(VerifyStep.RepeatWhatConfirmed repeat) -> Optional.empty());
	}

	private void tick(int number, String text) {
		boolean ticked = progress.isTicked(Tick.CHECK, number);
		checks.add(new Check(new At(number, Optional.empty()), text, "", Optional.empty(), Optional.empty(), "", ticked,
				ticked ? Verdict.AS_EXPECTED : Verdict.OPEN, ""));
	}

	/** @param step what its author expects; nothing for what only has to confirm no more */
	private void read(At at, String text, Subject subject, Optional<VerifyStep> step) {
		Optional<Reading> read = Optional.ofNullable(progress.read().get(at));
		boolean mustNot = confirmed.rest().contains(subject.variable()) && (step.isEmpty() || repeatsAll || isRepeatedOnly(step.get()));
		Truth expected = read.map(reading -> step.map(each -> isAsExpected(each, reading)).orElse(Truth.YES)).orElse(Truth.OPEN);
		Truth right = read.map(reading -> mustNot ? expected.and(confirmed.again(subject.variable(), readWith(reading)).not()) : expected).orElse(Truth.OPEN);
		checks.add(new Check(at, text, expected(subject, step, mustNot), Optional.of(subject), read, read.map(bench::said).orElse(""), false,
				right == Truth.OPEN ? Verdict.OPEN : right == Truth.YES ? Verdict.AS_EXPECTED : Verdict.NOT_AS_EXPECTED,
				read.map(reading -> right == Truth.OPEN ? undecided(reading) : "").orElse("")));
	}

	private static boolean isRepeatedOnly(VerifyStep step) {
		return step instanceof VerifyStep.Repeat repeat && repeat.values().isEmpty();
	}

	/** Returns all that was read, of what is read several times this reading. */
	private List<Reading> readWith(Reading reading) {
		Map<Variable, Reading> all = new LinkedHashMap<>();
		progress.read().values().forEach(each -> all.put(Variable.of(base, each), each));
		all.put(Variable.of(base, reading), reading);
		return List.copyOf(all.values());
	}

	private Truth isAsExpected(VerifyStep step, Reading reading) {
		if (step instanceof VerifyStep.Expect expect) {
			return Truth.of(expect.present() ? CodeReading.PRESENT : CodeReading.ABSENT, ((Reading.CodeRead) reading).reading());
		} else if (step instanceof VerifyStep.ExpectSign expect) {
			return Truth.of(((Reading.SignSeen) reading).present() == expect.present());
		}
		return ((VerifyStep.Repeat) step).values()
				.flatMap(values -> base.test(reading.subject()).map(test -> Truth.of(values, test.domain(), reading))).orElse(Truth.YES);
	}

	private static String undecided(Reading reading) {
		if (reading instanceof Reading.CodeRead read) {
			return read.reading() == CodeReading.UNREAD ? "That tells nothing: the module is silent."
					: read.reading() == CodeReading.UNTESTED ? "That tells nothing yet: the module has not tested for it since its codes were cleared."
							: "That alone does not tell: read the state of the code, and what else confirmed the fault.";
		}
		return "That alone does not tell: repeat also what else confirmed the fault.";
	}

	private String expected(Subject subject, Optional<VerifyStep> step, boolean mustNot) {
		Optional<String> said = step.flatMap(each -> each instanceof VerifyStep.Expect code ? Optional.of(code.present() ? "present" : "absent")
				: each instanceof VerifyStep.ExpectSign sign ? Optional.of((sign.present() ? "present" : "absent") + (sign.tried() > 1 ? ", tried " + sign.tried() + " times" : ""))
						: ((VerifyStep.Repeat) each).values().map(values -> limits(subject, values)));
		return said.orElseGet(() -> !mustNot ? "" : switch (subject.variable().kind()) {
		case SIGN, CODE -> "absent";
		case MODULE -> "answers";
		case TEST, TRAIT -> limits(subject, confirmed.right(subject.variable()));
		});
	}

	private String limits(Subject subject, ValueSet values) {
		return base.test(subject.variable().name()).map(test -> Limits.say(values, test.domain())).orElse("");
	}
}
