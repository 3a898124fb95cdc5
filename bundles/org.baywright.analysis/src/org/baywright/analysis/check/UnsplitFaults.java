package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.analysis.sat.SatSolver;
import org.baywright.model.Conclusion;
import org.baywright.model.Fault;
import org.baywright.model.Severity;
import org.baywright.model.VerdictKind;

/** Faults that no set of tests can tell apart: in every situation they are confirmed and cleared together. */
@RuleCheck(id = "unsplit-faults", severity = Severity.WARNING, summary = "No set of tests can tell these faults apart")
public final class UnsplitFaults implements ProofCheck<List<List<String>>> {

	@Override
	public List<List<String>> examine(Prover prover) {
		TreeSet<String> faults = new TreeSet<>();
		for (Verdict verdict : prover.program().verdicts) {
			if (decides(verdict.kind())) {
				faults.add(verdict.fault());
			}
		}
		List<List<String>> groups = new ArrayList<>();
		for (String fault : faults) {
			groups.stream().filter(group -> !isSplit(prover, group.get(0), fault)).findFirst().orElseGet(() -> {
				groups.add(new ArrayList<>());
				return groups.get(groups.size() - 1);
			}).add(fault);
		}
		return groups.stream().filter(group -> group.size() > 1).map(List::copyOf).toList();
	}

	private static boolean decides(VerdictKind kind) {
		return kind == VerdictKind.CONFIRMED || kind == VerdictKind.CLEARED;
	}

	private static boolean isSplit(Prover prover, String a, String b) {
		return isSplitBy(prover, VerdictKind.CONFIRMED, a, b) || isSplitBy(prover, VerdictKind.CLEARED, a, b);
	}

	private static boolean isSplitBy(Prover prover, VerdictKind kind, String a, String b) {
		return isShown(prover, kind, a, b) || isShown(prover, kind, b, a)
				|| differ(prover, prover.program().numberOf(new Verdict(a, kind)),
						prover.program().numberOf(new Verdict(b, kind)), a, b);
	}

	/** Returns whether a situation already known gives the verdict on the one fault and not on the other. */
	private static boolean isShown(Prover prover, VerdictKind kind, String fault, String other) {
		int verdict = prover.program().numberOf(new Verdict(other, kind));
		for (int b : Pairs.deriving(prover.program(), fault, kind)) {
			Optional<Program.Derived> derived = prover.derivedWhenShown(b);
			if (derived.isPresent()) {
				return verdict < 0 || !derived.get().verdicts()[verdict];
			}
		}
		return false;
	}

	private static boolean differ(Prover prover, int first, int second, String a, String b) {
		Encoding encoding = prover.encoding();
		int left = first < 0 ? -SatSolver.TRUE : encoding.verdict(first);
		int right = second < 0 ? -SatSolver.TRUE : encoding.verdict(second);
		Answer oneWay = encoding.ask(left, -right);
		Answer otherWay = oneWay == Answer.YES ? Answer.YES : encoding.ask(-left, right);
		if (oneWay != Answer.YES && otherWay == Answer.UNDECIDED || oneWay == Answer.UNDECIDED && otherWay != Answer.YES) {
			prover.undecided("whether " + a + " and " + b + " can be told apart");
			return true;
		}
		return otherWay == Answer.YES;
	}

	@Override
	public List<List<String>> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		Map<String, Map<String, Set<Component>>> together = new TreeMap<>();
		checked.each(this, (part, groups) -> {
			for (List<String> group : groups) {
				for (String a : group) {
					for (String b : group) {
						if (a.compareTo(b) < 0) {
							together.computeIfAbsent(a, key -> new TreeMap<>())
									.computeIfAbsent(b, key -> new HashSet<>()).add(part);
						}
					}
				}
			}
		});
		if (together.isEmpty()) {
			return;
		}
		Set<String> confirmable = Confirming.faults(checked);
		together.keySet().retainAll(confirmable);
		together.values().forEach(others -> others.keySet().retainAll(confirmable));
		Map<String, Set<Component>> partsOf = partsOfFaults(checked, together);
		Set<String> told = new HashSet<>();
		together.forEach((a, others) -> {
			TreeSet<String> group = new TreeSet<>(Set.of(a));
			others.forEach((b, parts) -> {
				if (parts.containsAll(partsOf.get(a)) && parts.containsAll(partsOf.get(b))) {
					group.add(b);
				}
			});
			if (group.size() > 1 && told.add(a)) {
				told.addAll(group);
				report(checked, List.copyOf(group));
			}
		});
	}

	/** Returns for each fault the parts in which some situation confirms or clears it. */
	private static Map<String, Set<Component>> partsOfFaults(Checked checked,
			Map<String, Map<String, Set<Component>>> together) {
		Map<String, Set<Component>> parts = new HashMap<>();
		together.forEach((a, others) -> {
			parts.put(a, new HashSet<>());
			others.keySet().forEach(b -> parts.put(b, new HashSet<>()));
		});
		Map<Component, Set<Verdict>> never = new HashMap<>();
		checked.each(Checks.get(UnreachableConclusion.class), (part, found) -> found
				.forEach(fact -> never.computeIfAbsent(part, key -> new HashSet<>()).add(fact.verdict())));
		checked.base().rules().forEach(rule -> rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(said -> {
			if (said instanceof Conclusion.OnFault on && decides(on.verdict()) && parts.containsKey(on.fault())) {
				Verdict verdict = new Verdict(on.fault(), on.verdict());
				checked.partsOf(rule.name()).stream()
						.filter(part -> !never.getOrDefault(part, Set.of()).contains(verdict))
						.forEach(parts.get(on.fault())::add);
			}
		})));
		return parts;
	}

	private void report(Checked checked, List<String> faults) {
		if (HeldBack.in(checked).decides(faults)) {
			return;
		}
		Fault first = checked.base().fault(faults.get(0)).orElseThrow();
		Checked.Draftsman flaw = checked.flaw(this, String.join("+", faults), first.span())
				.says("No set of tests can tell " + String.join(", ", faults)
						+ " apart: the rules always confirm and clear them together; "
						+ "find a test that splits them, or make one fault of them.");
		for (String fault : faults) {
			checked.base().fault(fault).filter(other -> other != first)
					.ifPresent(other -> flaw.near(other.span(), "fault " + other.name()));
			flaw.about(fault);
		}
		flaw.add();
	}
}
