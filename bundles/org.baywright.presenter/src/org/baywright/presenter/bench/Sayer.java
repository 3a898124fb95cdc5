package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Clash;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Consultation.Obstacle;
import org.baywright.analysis.Consultation.Standing;
import org.baywright.analysis.Consultation.State;
import org.baywright.analysis.Demand;
import org.baywright.analysis.Pointers;
import org.baywright.analysis.Verdict;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Exclusive;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Shown.RuleLine;
import org.baywright.presenter.bench.Shown.VerdictLine;

/** Puts an advice into words. */
record Sayer(RuleBase base, String family, Words words) {

	/** What to say where nothing can begin. */
	static final String NO_COMPLAINT = "These rules know no complaint of such a vehicle. Write a sign first, and a rule that asks for it.";
	private static final String LAST = "If nothing else is found: ";

	private static final Comparator<Derived> ENDS_FIRST = Comparator
			.comparing((Derived derived) -> derived.verdict().kind() == VerdictKind.CONFIRMED ? 0
					: derived.verdict().isReferral() ? 1 : derived.verdict().kind() == VerdictKind.SUSPECTED ? 2 : 3);

	Sayer(RuleBase base, String family) {
		this(base, family, new Words(base));
	}

	Shown shown(List<Link> precautions, List<Spoilt> spoilt, Advice advice, Lead lead, Mending mending) {
		Comparator<Derived> order = ENDS_FIRST.thenComparing(derived -> -Pointers.of(base, derived)).thenComparing(Derived::verdict);
		List<VerdictLine> verdicts = advice.verdicts().stream().filter(derived -> isNews(derived, advice)).sorted(order)
				.map(derived -> verdict(derived, open(advice) > 0 && isLast(derived))).toList();
		List<Link> warnings = new ArrayList<>(spoilt.stream().map(this::doesNotCount).toList());
		warnings.addAll(warnings(advice));
		String headline = lead.asksComplaint() && verdicts.isEmpty() && base.signs().stream().noneMatch(sign -> base.reaches(sign.scope(), family)) ? NO_COMPLAINT : headline(advice);
		return new Shown(precautions, headline, warnings, verdicts, rules(advice, State.FIRED),
				rules(advice, State.OPEN), rules(advice, State.NEVER), rules(advice, State.UNDECIDED), lead, Optional.of(mending).filter(any -> advice.clashes().isEmpty()), advice);
	}

	private Link doesNotCount(Spoilt spoilt) {
		return new Link(Say.upper(words.reading(family, spoilt.reading())) + ": this does not count, as “" + words.test(spoilt.test()) + "” was done before and disturbs it.",
				Span.NONE);
	}

	/** Who is confirmed or cleared is no suspect any more. */
	private static boolean isNews(Derived derived, Advice advice) {
		Verdict verdict = derived.verdict();
		return verdict.kind() != VerdictKind.SUSPECTED || advice.verdicts().stream().map(Derived::verdict)
				.noneMatch(other -> other.fault().equals(verdict.fault()) && other.kind() != null && other.kind() != VerdictKind.SUSPECTED);
	}

	private String headline(Advice advice) {
		if (!advice.clashes().isEmpty()) {
			return "These findings cannot all be so.";
		}
		List<String> confirmed = advice.verdicts().stream().filter(derived -> derived.verdict().isEnd() && !derived.verdict().isReferral())
				.sorted(ENDS_FIRST.thenComparing(Derived::verdict)).map(derived -> Say.verdict(words, derived.verdict())).toList();
		Map<Boolean, List<String>> referrals = advice.verdicts().stream().filter(derived -> derived.verdict().isReferral()).sorted(ENDS_FIRST.thenComparing(Derived::verdict))
				.collect(Collectors.partitioningBy(this::isLast, Collectors.mapping(derived -> Say.verdict(words, derived.verdict()), Collectors.toList())));
		long open = open(advice);
		long unsure = advice.rules().stream().filter(rule -> rule.state() == State.UNDECIDED).count();
		String rest = Say.count(open, "rule") + " may still apply"
				+ (unsure == 0 ? "" : "; " + Say.count(unsure, "rule") + " could not be decided");
		String found = confirmed.isEmpty() ? "Nothing is confirmed" : Words.and(confirmed);
		if (open + unsure == 0) {
			List<String> all = referrals.values().stream().flatMap(List::stream).sorted().toList();
			return all.isEmpty() ? found + ", and no rule can apply any more." : found + ". " + Words.and(all) + ".";
		}
		return sentence("", referrals.get(false)) + found + (confirmed.isEmpty() ? " yet; " : "; ") + rest + "."
				+ (referrals.get(true).isEmpty() ? "" : " " + sentence(LAST, referrals.get(true)).strip());
	}

	private static String sentence(String before, List<String> referrals) {
		String said = Words.and(referrals);
		return referrals.isEmpty() ? "" : (before.isEmpty() ? said : before + Say.lower(said)) + ". ";
	}

	/** Returns whether a job is handed on only as long as nothing explains a sign: no reason to send it away before the tests are done. */
	private boolean isLast(Derived derived) {
		return derived.verdict().isReferral() && derived.rules().stream().flatMap(name -> base.rule(name).stream())
				.allMatch(rule -> RuleScope.atoms(rule).stream().anyMatch(Condition.Unexplained.class::isInstance));
	}

	private static long open(Advice advice) {
		return advice.rules().stream().filter(rule -> rule.state() == State.OPEN).count();
	}

	/** @param early whether the job is handed on only if nothing else is found, and something still may be */
	private VerdictLine verdict(Derived derived, boolean early) {
		int pointers = Pointers.of(base, derived);
		String said = Say.verdict(words, derived.verdict()) + (pointers > 1 ? ": " + pointers + " independent pointers" : "");
		return new VerdictLine(early ? LAST + Say.lower(said) : said, derived.verdict().kind(),
				derived.rules().stream().map(this::link).toList());
	}

	private Link link(String rule) {
		return base.rule(rule).map(found -> new Link(found.title(), found.span())).orElse(new Link(rule, Span.NONE));
	}

	// ---- rules ---------------------------------------------------------------------------------------------

	private List<RuleLine> rules(Advice advice, State state) {
		return advice.rules().stream().filter(standing -> standing.state() == state).map(this::line).toList();
	}

	/** Returns a rule with what it says, waits for or lacks. */
	RuleLine line(Standing standing) {
		Rule rule = base.rule(standing.rule()).orElseThrow();
		return new RuleLine(rule.name(), rule.title(), rule.span(), lines(rule, standing));
	}

	private List<Link> lines(Rule rule, Standing standing) {
		return switch (standing.state()) {
		case FIRED -> standing.fired().stream().map(outcome -> outcome(rule, rule.outcomes().get(outcome))).toList();
		case OPEN, UNDECIDED -> standing.needs().stream().map(need -> demand(need.demand(), "waits for: ")).toList();
		case NEVER -> obstacle(standing.obstacle());
		};
	}

	private Link outcome(Rule rule, Outcome outcome) {
		String result = words.result(rule, outcome);
		List<String> said = outcome.conclusions().stream().map((Conclusion each) -> words.conclusion(each)).toList();
		return new Link((result.isEmpty() ? "" : result + ": ") + Words.and(said), outcome.span());
	}

	private Link demand(Demand demand, String before) {
		return new Link(before + asked(demand), demand.span());
	}

	private String asked(Demand demand) {
		return demand.isTest() && demand.condition() instanceof Condition.TestIs is
				? "the result of “" + words.test(is.test()) + "”"
				: words.condition(demand.condition());
	}

	private List<Link> obstacle(Obstacle obstacle) {
		List<Link> lines = new ArrayList<>();
		obstacle.demands().forEach(demand -> lines.add(demand(demand,
				obstacle.demands().size() == 1 ? "cannot be so any more: " : "cannot be so any more together: ")));
		if (obstacle.readings().isEmpty()) {
			lines.add(new Link(obstacle.demands().isEmpty() ? "The reason was not found: the search reached its limit."
					: "No vehicle of this family lets the rule apply.", Span.NONE));
		} else {
			lines.add(new Link("because of: " + Words.and(readings(obstacle.readings())), Span.NONE));
		}
		return lines;
	}

	private List<String> readings(List<Reading> readings) {
		return readings.stream().map(reading -> words.reading(family, reading)).toList();
	}

	// ---- what cannot be ------------------------------------------------------------------------------------

	private List<Link> warnings(Advice advice) {
		List<Link> warnings = new ArrayList<>();
		for (Clash clash : advice.clashes()) {
			String about = clash.readings().isEmpty() ? "" : " " + Say.upper(Words.and(readings(clash.readings()))) + ".";
			warnings.add(new Link(clash.message() + about, Span.NONE));
			base.laws().stream().filter(law -> clash.laws().contains(law.title())).map(this::law).forEach(warnings::add);
		}
		warnings.addAll(conflicts(advice.verdicts().stream().map(Derived::verdict).toList()));
		return warnings;
	}

	private Link law(Law law) {
		return new Link("The law says: " + law.title(), law.span());
	}

	private List<Link> conflicts(List<Verdict> standing) {
		List<Link> conflicts = new ArrayList<>();
		for (Verdict verdict : standing) {
			if (verdict.kind() == VerdictKind.CONFIRMED
					&& standing.contains(new Verdict(verdict.fault(), VerdictKind.CLEARED))) {
				conflicts.add(new Link("The rules contradict each other: " + words.fault(verdict.fault())
						+ " is both confirmed and cleared.", Span.NONE));
			}
		}
		for (Exclusive exclusive : base.exclusives()) {
			List<String> confirmed = exclusive.faults().stream()
					.filter(fault -> standing.contains(new Verdict(fault, VerdictKind.CONFIRMED))).map(words::fault).toList();
			if (confirmed.size() > 1) {
				conflicts.add(new Link("Only one of these can be the cause, but the rules confirm "
						+ Words.and(confirmed) + ".", exclusive.span()));
			}
		}
		return conflicts;
	}
}
