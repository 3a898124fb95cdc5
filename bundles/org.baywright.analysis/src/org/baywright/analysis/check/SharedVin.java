package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.List;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.VinPattern;
import org.baywright.model.code.Vin;

/** Two families, neither of which builds on the other, that claim the same vehicle identification numbers. */
@RuleCheck(id = "shared-vin", severity = Severity.WARNING, summary = "Two families claim the same identification numbers")
public final class SharedVin implements Check {

	/** Two beginnings of which some number has both. */
	private record Shared(VinPattern one, VinPattern two) {
	}

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		List<Family> claiming = base.families().stream().filter(family -> !family.vins().isEmpty()).toList();
		for (int i = 0; i < claiming.size(); i++) {
			for (Family two : claiming.subList(i + 1, claiming.size())) {
				Family one = claiming.get(i);
				boolean related = base.lineage(one.name()).contains(two.name()) || base.lineage(two.name()).contains(one.name());
				List<Shared> shared = related ? List.of() : shared(one, two);
				if (!shared.isEmpty()) {
					Shared first = shared.get(0);
					String both = Vin.both(first.one().pattern(), first.two().pattern()).orElseThrow();
					Checked.Draftsman flaw = checked.flaw(this, one.name() + "+" + two.name(), first.two().span())
							.says("A number that begins with " + both + " belongs to family " + one.name() + " and to family " + two.name()
									+ "; write more of the beginnings, until they differ.");
					shared.stream().map(Shared::one).distinct().forEach(pattern -> flaw.near(pattern.span(), "family " + one.name()));
					shared.stream().map(Shared::two).distinct().skip(1).forEach(pattern -> flaw.near(pattern.span(), "family " + two.name()));
					shared.forEach(pair -> flaw.about(pair.one().pattern() + "+" + pair.two().pattern()));
					flaw.add();
				}
			}
		}
	}

	private static List<Shared> shared(Family one, Family two) {
		List<Shared> shared = new ArrayList<>();
		for (VinPattern second : two.vins()) {
			for (VinPattern first : one.vins()) {
				if (Vin.both(first.pattern(), second.pattern()).isPresent()) {
					shared.add(new Shared(first, second));
				}
			}
		}
		return shared;
	}
}
