package org.baywright.analysis.check;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Conclusion;
import org.baywright.model.Fault;
import org.baywright.model.Outcome;
import org.baywright.model.Part;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;

/** A test that decides on a dangerous part and says neither where it is done nor what is dangerous there. */
@RuleCheck(id = "test-without-place", severity = Severity.WARNING, summary = "A test decides on a dangerous part and does not say where it is done")
public final class TestWithoutPlace implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		Map<String, List<Rule>> running = base.rules().stream().filter(rule -> rule.test().isPresent())
				.collect(Collectors.groupingBy(rule -> rule.test().orElseThrow()));
		for (Test test : base.tests()) {
			if (test.part(base).isEmpty() && test.place().isEmpty() && base.doneBy(test).place().isEmpty()) {
				report(checked, test, running.getOrDefault(test.name(), List.of()));
			}
		}
	}

	private void report(Checked checked, Test test, List<Rule> rules) {
		TreeSet<String> parts = new TreeSet<>();
		TreeSet<String> hazards = new TreeSet<>();
		Optional<Rule> first = Optional.empty();
		for (Rule rule : rules) {
			for (Outcome outcome : rule.outcomes()) {
				for (Conclusion said : outcome.conclusions()) {
					Optional<Part> part = decided(said).flatMap(checked.base()::fault).map(Fault::part).flatMap(checked.base()::part);
					List<String> untold = part.map(Part::hazards).orElse(List.of()).stream()
							.filter(hazard -> !test.cautions(checked.base()).contains(hazard)).toList();
					if (!untold.isEmpty()) {
						parts.add(part.orElseThrow().name());
						hazards.addAll(untold);
						first = first.or(() -> Optional.of(rule));
					}
				}
			}
		}
		if (first.isPresent()) {
			checked.flaw(this, test.name() + "/" + String.join("+", parts), test.span())
					.says("The test " + test.name() + " decides on " + (parts.size() == 1 ? "part " : "parts ") + Words.and(parts) + " with "
							+ (hazards.size() == 1 ? "hazard " : "hazards ") + Words.and(hazards)
							+ ", and does not say where it is done; write at with the part, or place.")
					.near(first.get().testSpan(), "rule " + first.get().name()).about(test.name() + parts + hazards).add();
		}
	}

	/** Returns the fault that is confirmed or cleared. */
	private static Optional<String> decided(Conclusion said) {
		return said instanceof Conclusion.OnFault on && on.verdict() != VerdictKind.SUSPECTED ? Optional.of(on.fault())
				: Optional.empty();
	}
}
