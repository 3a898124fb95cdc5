package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Standing;
import org.baywright.analysis.Verdict;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Shown.RuleLine;

/**
 * Which rules could have confirmed a cause, and what each of them lacks.
 *
 * @param headline the result in one sentence
 * @param rules the rules, each with why it did not confirm the cause
 */
public record Lacking(String headline, List<RuleLine> rules) {

	public Lacking {
		rules = List.copyOf(rules);
	}

	/**
	 * Returns what the rules lack on a bench.
	 *
	 * @param advice what the rules make of it
	 * @param cause name of the fault that was the cause
	 */
	public static Lacking of(Bench bench, Advice advice, String cause) {
		RuleBase base = bench.base();
		Words words = new Words(base);
		Verdict confirmed = new Verdict(cause, VerdictKind.CONFIRMED);
		String fault = "“" + words.fault(cause) + "”";
		if (advice.verdicts().stream().anyMatch(derived -> derived.verdict().equals(confirmed))) {
			return new Lacking("The rules confirm " + fault + " already.", List.of());
		}
		Sayer sayer = new Sayer(base, bench.now().family());
		List<RuleLine> lines = new ArrayList<>();
		for (Rule rule : base.rules()) {
			if (RuleScope.says(rule).contains(confirmed)) {
				lines.add(advice.rules().stream().filter(standing -> standing.rule().equals(rule.name())).findFirst().map((Standing standing) -> sayer.line(standing))
						.orElseGet(() -> new RuleLine(rule.name(), rule.title(), rule.span(),
								List.of(new Link("is for other vehicles: " + words.scope(rule.scope()), rule.span())))));
			}
		}
		return new Lacking(lines.isEmpty() ? "No rule can confirm " + fault + "." : Say.upper(Say.count(lines.size(), "rule")) + " can confirm " + fault
				+ (lines.size() == 1 ? ", and has not." : ", and none has."), lines);
	}

	/**
	 * Returns what keeps a finished job from its end.
	 *
	 * @param result what the rules make of it; one that passed lacks nothing
	 */
	public static Lacking of(RuleBase base, CaseResult result) {
		return new Lacking(Say.upper(result.message()), result.blamed().stream()
				.map(blame -> new RuleLine(blame.rule(), base.rule(blame.rule()).map(Rule::title).orElse(""), blame.span(), List.of(new Link(blame.does(), blame.span()))))
				.toList());
	}
}
