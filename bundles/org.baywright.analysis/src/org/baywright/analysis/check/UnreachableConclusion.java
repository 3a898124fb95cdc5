package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/**
 * A verdict that rules wait for and that no rule states. One that dead rules state is named as a consequence where these
 * are told.
 */
@RuleCheck(id = "unreachable-conclusion", severity = Severity.WARNING, summary = "No situation leads to this verdict")
public final class UnreachableConclusion implements ProofCheck<List<UnreachableConclusion.Never>> {

	/** A verdict that is not derived in one part. */
	record Never(Verdict verdict) {
	}

	@Override
	public List<Never> examine(Prover prover) {
		Program program = prover.program();
		List<Never> found = new ArrayList<>();
		for (int verdict = 0; verdict < program.verdicts.size(); verdict++) {
			List<Integer> deriving = program.derivedBy.get(verdict);
			if (deriving.stream().allMatch(b -> prover.live(b) == Answer.NO)) {
				found.add(new Never(program.verdicts.get(verdict)));
			}
		}
		return found;
	}

	@Override
	public List<Never> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		Map<Verdict, Map<Component, Never>> byVerdict = new TreeMap<>();
		checked.each(this, (part, nevers) -> nevers.forEach(
				never -> byVerdict.computeIfAbsent(never.verdict(), key -> new LinkedHashMap<>()).put(part, never)));
		if (byVerdict.isEmpty()) {
			return;
		}
		Map<Verdict, List<Use>> uses = uses(checked, byVerdict.keySet());
		Map<List<Object>, List<Verdict>> byQuestion = new LinkedHashMap<>();
		byVerdict.forEach((verdict, byPart) -> {
			List<Use> used = uses.getOrDefault(verdict, List.of());
			if (!used.isEmpty() && !HeldBack.in(checked).decides(verdict.fault()) && used.stream().noneMatch(Use::states) && byPart.keySet().containsAll(parts(checked, used))) {
				// what is asked in the same lines is told once
				List<Object> lines = used.stream().<Object>map(use -> use.span().file() + " " + use.span().line()).toList();
				byQuestion.computeIfAbsent(List.of(verdict.kind(), lines), key -> new ArrayList<>()).add(verdict);
			}
		});
		byQuestion.values().forEach(verdicts -> report(checked, verdicts, uses.get(verdicts.get(0))));
	}

	private static Set<Component> parts(Checked checked, List<Use> uses) {
		Set<Component> parts = new HashSet<>();
		uses.forEach(use -> parts.addAll(checked.partsOf(use.rule().name())));
		return parts;
	}

	/** Returns the verdicts that rules state and that no situation derives in any family: these rules are dead. */
	static Set<Verdict> lost(Checked checked) {
		return checked.shared("lost verdicts", () -> {
			Map<Verdict, Set<Component>> never = new TreeMap<>();
			checked.each(Checks.get(UnreachableConclusion.class), (part, nevers) -> nevers
					.forEach(fact -> never.computeIfAbsent(fact.verdict(), key -> new HashSet<>()).add(part)));
			checked.unreached().stream().flatMap(rule -> rule.outcomes().stream())
					.flatMap(outcome -> outcome.conclusions().stream()).map(Verdict::of).flatMap(Optional::stream)
					.forEach(verdict -> never.computeIfAbsent(verdict, key -> new HashSet<>()));
			Map<Verdict, List<Use>> uses = never.isEmpty() ? Map.of() : uses(checked, never.keySet());
			never.keySet().removeIf(verdict -> HeldBack.in(checked).decides(verdict.fault()));
			never.entrySet().removeIf(entry -> {
				List<Use> states = uses.getOrDefault(entry.getKey(), List.of()).stream().filter(Use::states).toList();
				return states.isEmpty() || !entry.getValue().containsAll(parts(checked, states));
			});
			return never.keySet();
		});
	}

	private void report(Checked checked, List<Verdict> verdicts, List<Use> uses) {
		Use first = uses.get(0);
		List<String> faults = verdicts.stream().map(Verdict::fault).toList();
		String kind = verdicts.get(0).kind().word();
		Checked.Draftsman flaw = checked.flaw(this, String.join("+", faults) + "/" + kind, first.span())
				.says("A rule asks whether " + ClashReport.say(checked, faults) + (faults.size() == 1 ? " is " : " are ") + kind
						+ ", but no rule ever says so; add that rule, or take the question out.");
		for (Use use : uses) {
			flaw.about(use.rule());
			if (use != first) {
				flaw.near(use.span(), "rule " + use.rule().name() + " asks for it");
			}
		}
		flaw.add();
	}

	/** A place where a rule states a verdict or waits for it. */
	private record Use(Rule rule, boolean states, Span span) {
	}

	private static Map<Verdict, List<Use>> uses(Checked checked, Set<Verdict> wanted) {
		Map<Verdict, List<Use>> uses = new HashMap<>();
		Set<String> faults = new HashSet<>();
		wanted.forEach(verdict -> faults.add(verdict.fault()));
		boolean referrals = wanted.stream().anyMatch(Verdict::isReferral);
		for (Rule rule : checked.base().rules()) {
			if (!referrals && checked.faults(rule).stream().noneMatch(faults::contains)) {
				continue;
			}
			for (Outcome outcome : rule.outcomes()) {
				for (Conclusion conclusion : outcome.conclusions()) {
					Verdict verdict = conclusion instanceof Conclusion.OnFault on
							? faults.contains(on.fault()) ? new Verdict(on.fault(), on.verdict()) : null
							: conclusion instanceof Conclusion.Refers to ? Verdict.referral(to.toWhom()) : null;
					add(uses, wanted, verdict, rule, true, conclusion.span());
				}
			}
			rule.given().forEach(given -> given.eachAtom(atom -> collect(uses, wanted, rule, atom)));
		}
		return uses;
	}

	private static void collect(Map<Verdict, List<Use>> uses, Set<Verdict> wanted, Rule rule, Condition.Atom atom) {
		if (atom instanceof Condition.VerdictIs is) {
			add(uses, wanted, new Verdict(is.fault(), is.verdict()), rule, false, is.span());
		}
	}

	private static void add(Map<Verdict, List<Use>> uses, Set<Verdict> wanted, Verdict verdict, Rule rule,
			boolean states, Span span) {
		if (verdict != null && wanted.contains(verdict)) {
			uses.computeIfAbsent(verdict, key -> new ArrayList<>()).add(new Use(rule, states, span));
		}
	}
}
