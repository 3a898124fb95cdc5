package org.baywright.analysis.check;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.proof.SourceLine;
import org.baywright.model.Law;
import org.baywright.model.Severity;

/** Laws that no vehicle of a family can obey together. Nothing else is proved about the rules they concern. */
@RuleCheck(id = "impossible-vehicle", severity = Severity.ERROR, summary = "The laws leave no vehicle of the family")
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
		Set<List<SourceLine>> told = new HashSet<>();
		checked.each(this, (part, lines) -> {
			if (!lines.isEmpty() && told.add(lines)) {
				Law first = checked.base().laws().stream()
						.filter(law -> law.title().equals(lines.get(0).element())).findFirst().orElseThrow();
				Checked.Draftsman finding = checked.finding(this, part.families().get(0) + "/" + first.title(), first.span())
						.says("No vehicle of family " + String.join(", ", part.families())
								+ " can obey these laws together, so no rule for it can ever fire; correct one of them.")
						.shownBy(checked.core(lines));
				lines.forEach(line -> finding.about(line.element()));
				finding.add();
			}
		});
	}
}
