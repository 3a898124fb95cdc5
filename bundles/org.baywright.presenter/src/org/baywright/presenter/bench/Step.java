package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Need;
import org.baywright.analysis.Consultation.Standing;
import org.baywright.analysis.Consultation.State;
import org.baywright.analysis.Halving;
import org.baywright.analysis.Pointers;
import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.Conclusion;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;
import org.baywright.presenter.Say;

/**
 * Something to find out next.
 *
 * @param subject what
 * @param cost its price with that of its tools, in the project's own money
 * @param minutes how long it takes; 0 for a question or a look
 * @param along with what it is found out: a module that is asked for something else already, so that this costs nothing more, or the
 *     test that it is seen with; the empty text for all else
 * @param ready rules that have begun and wait for nothing else, as titles
 * @param begun how many other rules ask for it of which something holds already
 * @param pointers by how many pointers that are independent of each other a fault is suspected that it can decide; 0 for none
 * @param halves the chain of which it halves what is left best, as a title; the empty text for all else
 * @param left the greater part of what is left in the chain after it, from 0.5 to 1; 0.5 for what is in no chain
 * @param pictures what shows where or how it is done, each with the way to its file
 * @param others how many rules ask for it of which nothing holds yet
 */
public record Step(Subject subject, BigDecimal cost, BigDecimal minutes, String along, List<String> ready, int begun,
		int pointers, String halves, double left, List<Link> pictures, int others) {

	/** What ends a rule that has begun comes first, what has to do with none that has begun last. */
	private static final Comparator<Step> CHEAPEST = Comparator
			.comparing((Step step) -> !step.ready().isEmpty() ? 0 : step.begun() > 0 ? 1 : 2).thenComparing(Step::cost)
			.thenComparing(step -> -step.pointers())
			.thenComparing(Step::left).thenComparing(Step::minutes).thenComparing(step -> -step.ready().size()).thenComparing(step -> -step.begun())
			.thenComparing(step -> -step.others()).thenComparing(step -> step.subject().variable());

	public Step {
		ready = List.copyOf(ready);
		pictures = List.copyOf(pictures);
	}

	/** Returns why it is worth doing. */
	public String reason() {
		List<String> reasons = new ArrayList<>();
		if (!ready.isEmpty()) {
			reasons.add("it is all that the " + (ready.size() == 1 ? "rule " : "rules ")
					+ Words.and(ready.stream().map(title -> "“" + title + "”").toList())
					+ (ready.size() == 1 ? " still needs" : " still need"));
		}
		if (!halves.isEmpty()) {
			reasons.add("it halves what is left of “" + halves + "”");
		}
		if (pointers > 1) {
			reasons.add("it decides a suspicion that " + pointers + " independent pointers found");
		}
		if (begun > 0) {
			reasons.add(asking(begun, ready.isEmpty() ? "" : " more") + (begun == 1 ? " that has" : " that have") + " begun");
		}
		if (others > 0 && reasons.isEmpty()) {
			reasons.add(asking(others, ""));
		}
		return Say.upper(String.join("; ", reasons)) + ".";
	}

	private static String asking(int rules, String more) {
		String who = rules == 1 ? "one" + more + " rule" : rules + more + " rules";
		return "it is asked for by " + who;
	}

	/** Returns what it takes: "8 min, cost 5"; the empty text if nothing. */
	public String effort() {
		String price = cost.signum() > 0 ? "cost " + Meaning.number(cost) : "";
		return Stream.of(along, Telling.minutes(minutes), price).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
	}

	/** Returns everything that an open rule looks at and nobody has found out. */
	static List<Step> of(RuleBase base, String family, List<Reading> readings, Advice advice) {
		List<Standing> standings = advice.rules();
		Map<String, Integer> founded = founded(base, advice);
		Map<Variable, Integer> pointers = new TreeMap<>();
		Map<Variable, List<String>> ready = new TreeMap<>();
		Map<Variable, Integer> begun = new TreeMap<>();
		Map<Variable, Integer> others = new TreeMap<>();
		Halving halving = new Halving(base, family, readings);
		for (Standing standing : standings) {
			if (standing.state() == State.OPEN) {
				String title = base.rule(standing.rule()).map(Rule::title).orElse(standing.rule());
				standing.needs().stream().flatMap(need -> need.open().stream()).distinct()
						.filter(variable -> !(base.isOfChain(standing.rule()) && isDecided(halving, variable))).forEach(variable -> {
					ready.computeIfAbsent(variable, key -> new ArrayList<>());
					pointers.merge(variable, decided(base, standing, founded), Math::max);
					if (standing.begun() && isLast(standing.needs(), variable)) {
						ready.get(variable).add(title);
					} else {
						(standing.begun() ? begun : others).merge(variable, 1, Integer::sum);
					}
				});
			}
		}
		Subjects subjects = new Subjects(base, family);
		List<Step> steps = new ArrayList<>();
		ready.forEach((variable, rules) -> subjects.subject(variable).ifPresent(
				subject -> steps
						.add(step(base, subject, halving, rules, begun.getOrDefault(variable, 0), pointers.get(variable),
								others.getOrDefault(variable, 0)))));
		return inOrder(base, steps, readings);
	}

	/**
	 * The cheapest first. Who asks a module has all its codes, and who does a test sees what is seen with it: the first of them
	 * pays for the others.
	 */
	private static List<Step> inOrder(RuleBase base, List<Step> steps, List<Reading> readings) {
		Map<String, Variable> paid = new HashMap<>();
		readings.forEach(reading -> pay(base, Bench.variable(base, reading), paid));
		List<Step> left = new ArrayList<>(steps);
		List<Step> order = new ArrayList<>();
		while (!left.isEmpty()) {
			left.replaceAll(step -> step.after(base, paid));
			Step next = Collections.min(left, CHEAPEST);
			left.remove(next);
			order.add(next);
			pay(base, next.subject().variable(), paid);
		}
		return order;
	}

	/** Notes what is found out first of all that is found out by the same module or test. */
	private static void pay(RuleBase base, Variable variable, Map<String, Variable> paid) {
		module(base, variable).map(Module::name).or(() -> test(base, variable).map(base::doneBy).map(Test::name))
				.ifPresent(by -> paid.putIfAbsent(by, variable));
	}

	/** Returns the step as it is when some modules are asked and tests done already. */
	private Step after(RuleBase base, Map<String, Variable> paid) {
		if (cost.signum() == 0 && minutes.signum() == 0) {
			return this;
		}
		Variable variable = subject.variable();
		Optional<Module> asked = module(base, variable).filter(module -> paid.containsKey(module.name()));
		if (asked.isPresent()) {
			return free("in the same reading of " + asked.get().title());
		}
		return test(base, variable).filter(test -> paid.containsKey(base.doneBy(test).name())).map(test -> free(test.seenWith().isPresent() ? along
				: "together with " + new Words(base).test(paid.get(test.name()).name()))).orElse(this);
	}

	private Step free(String with) {
		return new Step(subject, BigDecimal.ZERO, BigDecimal.ZERO, with, ready, begun, pointers, halves, left, pictures, others);
	}

	private static String seenWith(RuleBase base, String test) {
		return "seen with " + new Words(base).test(test);
	}

	private static Optional<Test> test(RuleBase base, Variable variable) {
		return variable.kind() == Variable.Kind.TEST ? base.test(variable.name()) : Optional.empty();
	}

	/** Returns the module that is asked to find out about a code, or about itself. */
	private static Optional<Module> module(RuleBase base, Variable variable) {
		return switch (variable.kind()) {
		case CODE -> base.code(variable.name()).map(Code::module).flatMap(base::module);
		case MODULE -> base.module(variable.name());
		default -> Optional.empty();
		};
	}

	/** Returns for each suspected fault by how many independent pointers it is suspected. */
	private static Map<String, Integer> founded(RuleBase base, Advice advice) {
		Map<String, Integer> founded = new HashMap<>();
		advice.verdicts().forEach(derived -> founded.merge(derived.verdict().fault(), Pointers.of(base, derived), Math::max));
		return founded;
	}

	/** Returns the best founded suspicion that a rule may confirm or clear yet. */
	private static int decided(RuleBase base, Standing standing, Map<String, Integer> founded) {
		return base.rule(standing.rule()).stream().flatMap(rule -> standing.possible().stream().map(rule.outcomes()::get))
				.flatMap(outcome -> outcome.conclusions().stream())
				.mapToInt(said -> said instanceof Conclusion.OnFault on && on.verdict() != VerdictKind.SUSPECTED
						? founded.getOrDefault(on.fault(), 0) : 0).max().orElse(0);
	}

	/** Returns whether the result of a point follows from others, so that no chain asks for it any more. */
	private static boolean isDecided(Halving halving, Variable variable) {
		return variable.kind() == Variable.Kind.TEST && halving.isDecided(variable.name());
	}

	/** Returns whether one answer can give all that is still needed. */
	private static boolean isLast(List<Need> needs, Variable variable) {
		return needs.size() == 1 && needs.get(0).open().contains(variable);
	}

	private static Step step(RuleBase base, Subject subject, Halving halving, List<String> ready, int begun, int pointers, int others) {
		Optional<Test> test = test(base, subject.variable());
		Optional<Halving.Split> split = test.flatMap(found -> halving.of(found.name()));
		Optional<Module> module = module(base, subject.variable());
		BigDecimal cost = test.map(found -> found.cost(base)).or(() -> module.map(found -> found.cost(base))).orElse(BigDecimal.ZERO);
		BigDecimal minutes = test.map(base::doneBy).map(Test::takes).or(() -> module.map(found -> base.scan(found).takes())).orElse(BigDecimal.ZERO);
		String along = test.flatMap(Test::seenWith).map(other -> seenWith(base, other)).orElse("");
		return new Step(subject, cost, minutes, along, ready, begun, pointers,
				split.filter(Halving.Split::best).map(Halving.Split::chain).orElse(""),
				split.map(Halving.Split::left).orElse(0.5), test.map(found -> pictures(base, found)).orElse(List.of()), others);
	}

	/** What shows a test, and then the part that it works on. */
	private static List<Link> pictures(RuleBase base, Test test) {
		return Stream.concat(test.pictures().stream(), test.part(base).flatMap(base::part).stream().flatMap(part -> part.pictures().stream()))
				.map(picture -> new Link("Picture: " + picture.words(), new Span(picture.file(), 1, 1, 1, 1, 0, 0))).toList();
	}
}
