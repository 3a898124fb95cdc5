package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.analysis.Consultation.Need;
import org.baywright.analysis.Consultation.Standing;
import org.baywright.analysis.Consultation.State;
import org.baywright.analysis.Variable;
import org.baywright.model.Meaning;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.words.Words;
import org.baywright.presenter.Say;

/**
 * Something to find out next.
 *
 * @param subject what
 * @param cost its price with that of its tools, in the project's own money
 * @param minutes how long it takes; 0 for a question or a look
 * @param ready rules that have begun and wait for nothing else, as titles
 * @param begun how many other rules ask for it of which something holds already
 * @param others how many rules ask for it of which nothing holds yet
 */
public record Step(Subject subject, BigDecimal cost, BigDecimal minutes, List<String> ready, int begun, int others) {

	/** What ends a rule that has begun comes first, what has to do with none that has begun last. */
	private static final Comparator<Step> CHEAPEST = Comparator
			.comparing((Step step) -> !step.ready().isEmpty() ? 0 : step.begun() > 0 ? 1 : 2).thenComparing(Step::cost)
			.thenComparing(Step::minutes).thenComparing(step -> -step.ready().size()).thenComparing(step -> -step.begun())
			.thenComparing(step -> -step.others()).thenComparing(step -> step.subject().variable());

	public Step {
		ready = List.copyOf(ready);
	}

	/** Returns why it is worth doing. */
	public String reason() {
		List<String> reasons = new ArrayList<>();
		if (!ready.isEmpty()) {
			reasons.add("it is all that the " + (ready.size() == 1 ? "rule " : "rules ")
					+ Words.and(ready.stream().map(title -> "“" + title + "”").toList())
					+ (ready.size() == 1 ? " still needs" : " still need"));
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
		String time = Say.minutes(minutes);
		String price = cost.signum() > 0 ? "cost " + Meaning.number(cost) : "";
		return time + (time.isEmpty() || price.isEmpty() ? "" : ", ") + price;
	}

	/** Returns everything that an open rule looks at and nobody has found out. */
	static List<Step> of(RuleBase base, String family, List<Standing> standings) {
		Map<Variable, List<String>> ready = new TreeMap<>();
		Map<Variable, Integer> begun = new TreeMap<>();
		Map<Variable, Integer> others = new TreeMap<>();
		for (Standing standing : standings) {
			if (standing.state() == State.OPEN) {
				String title = base.rule(standing.rule()).map(Rule::title).orElse(standing.rule());
				standing.needs().stream().flatMap(need -> need.open().stream()).distinct().forEach(variable -> {
					ready.computeIfAbsent(variable, key -> new ArrayList<>());
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
						.add(step(base, subject, rules, begun.getOrDefault(variable, 0), others.getOrDefault(variable, 0)))));
		steps.sort(CHEAPEST);
		return steps;
	}

	/** Returns whether one answer can give all that is still needed. */
	private static boolean isLast(List<Need> needs, Variable variable) {
		return needs.size() == 1 && needs.get(0).open().contains(variable);
	}

	private static Step step(RuleBase base, Subject subject, List<String> ready, int begun, int others) {
		Optional<Test> test = subject.variable().kind() == Variable.Kind.TEST ? base.test(subject.variable().name())
				: Optional.empty();
		return new Step(subject, test.map(found -> found.cost(base)).orElse(BigDecimal.ZERO),
				test.map(Test::takes).orElse(BigDecimal.ZERO), ready, begun, others);
	}
}
