package org.baywright.analysis.check;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.proof.SourceLine;
import org.baywright.model.Law;
import org.baywright.model.Severity;

/** Laws that no vehicle of a family can obey together. Nothing else is proved about the rules they concern. */
@RuleCheck(id = "impossible-vehicle", severity = Severity.ERROR, summary = "The laws rule out every vehicle of the family")
public final class ImpossibleVehicle implements ProofCheck<List<SourceLine>> {

	@Override
	public List<SourceLine> examine(Prover prover) {
		return prover.isPossible() ? List.of() : prover.reasons().whyNoVehicle().orElse(List.of());
	}

	@Override
	public List<SourceLine> nothing() {
		return List.of();
	}

	@Override
	public boolean needsNoProgram() {
		return true;
	}

	@Override
	public void report(Checked checked) {
		Map<List<SourceLine>, Set<String>> familiesByLaws = new LinkedHashMap<>();
		checked.each(this, (part, lines) -> {
			if (!lines.isEmpty()) {
				List<SourceLine> laws = lines.stream().flatMap(line -> line.lines().stream()).distinct().sorted().toList();
				familiesByLaws.computeIfAbsent(laws, key -> new LinkedHashSet<>()).addAll(part.families());
			}
		});
		familiesByLaws.forEach((lines, families) -> {
			List<Law> laws = lines.stream().map(checked::law).flatMap(Optional::stream).toList();
			Law first = checked.base().laws().stream().filter(laws::contains).findFirst().orElseThrow();
			Checked.Draftsman flaw = checked.flaw(this, families.iterator().next() + "/" + first.title(), first.span())
					.says("No vehicle of family " + String.join(", ", families)
							+ " can obey these laws together, so no rule for it can ever apply; correct one of them.")
					.shownBy(checked.core(lines));
			laws.forEach(law -> flaw.about(law.title()));
			flaw.add();
		});
	}
}
