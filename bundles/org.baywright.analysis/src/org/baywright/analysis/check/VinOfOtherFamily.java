package org.baywright.analysis.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Case;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.VinPattern;
import org.baywright.model.code.Vin;
import org.baywright.model.words.Words;

/** A finished job whose vehicle identification number another family claims more narrowly than the job's own. */
@RuleCheck(id = "vin-of-other-family", severity = Severity.WARNING, summary = "The number of a finished job belongs to another family")
public final class VinOfOtherFamily implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		for (Case job : base.cases()) {
			Optional<String> vin = job.vin().filter(number -> Vin.wrong(number).isEmpty());
			List<String> line = base.lineage(job.family());
			List<VinPattern> own = patterns(base, line).toList();
			List<VinPattern> fitting = own.stream().filter(pattern -> fits(vin, pattern)).toList();
			// that the number fits none of the family's own beginnings is told with the text
			if (vin.isPresent() && own.isEmpty() == fitting.isEmpty()) {
				List<Family> others = base.vehicleFamilies().stream().filter(other -> !line.contains(other.name()))
						.filter(other -> patterns(base, base.lineage(other.name()).stream().filter(name -> !line.contains(name)).toList())
								.anyMatch(pattern -> fits(vin, pattern) && fitting.stream().allMatch(mine -> narrower(pattern, mine))))
						.toList();
				report(checked, job, vin.get(), others.stream().map(Family::name).toList());
			}
		}
	}

	private void report(Checked checked, Case job, String vin, List<String> others) {
		if (!others.isEmpty()) {
			Checked.Draftsman flaw = checked.flaw(this, job.name(), job.span())
					.says("The number of job \"" + job.name() + "\" is one of " + (others.size() == 1 ? "family " : "families ")
							+ Words.and(others) + ", and the job is on family " + job.family() + "; correct the family or the number.")
					.about(vin + job.family() + others);
			others.forEach(other -> flaw.near(checked.base().family(other).orElseThrow().span(), "family " + other));
			flaw.add();
		}
	}

	private static Stream<VinPattern> patterns(RuleBase base, List<String> families) {
		return families.stream().flatMap(name -> base.family(name).stream()).flatMap(family -> family.vins().stream());
	}

	private static boolean fits(Optional<String> vin, VinPattern pattern) {
		return vin.filter(number -> Vin.matches(number, pattern.pattern())).isPresent();
	}

	/** Returns whether all numbers of one beginning have the other, and not the other way round. */
	private static boolean narrower(VinPattern one, VinPattern other) {
		return Vin.covers(other.pattern(), one.pattern()) && !Vin.covers(one.pattern(), other.pattern());
	}
}
