package org.baywright.analysis.check;

import java.util.TreeSet;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Part;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.Written;
import org.baywright.model.words.Words;

/** Work on a part with a hazard that its instructions do not warn of, or a hazard without a word of caution. */
@RuleCheck(id = "hazard-without-caution", severity = Severity.ERROR, summary = "Work on something dangerous carries no warning")
public final class HazardWithoutCaution implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		for (Hazard hazard : base.hazards()) {
			if (hazard.cautions().isEmpty()) {
				checked.flaw(this, hazard.name(), hazard.span())
						.says("Hazard " + hazard.name() + " has no caution: say what protects from it.")
						.about(hazard.name())
						.fix(new Fix.AddLine("Add a caution", "hazard", hazard.name(), "caution \"\"")).add();
			}
		}
		for (Test test : base.tests()) {
			TreeSet<String> hazards = new TreeSet<>();
			test.part().flatMap(base::part).map(Part::hazards).ifPresent(hazards::addAll);
			hazards.removeAll(test.cautions(base));
			report(checked, "test", test.name(), test.span(), hazards);
		}
		for (Repair repair : base.repairs()) {
			TreeSet<String> hazards = new TreeSet<>();
			repair.fixes().forEach(fault -> base.fault(fault).map(Fault::part).flatMap(base::part).map(Part::hazards)
					.ifPresent(hazards::addAll));
			hazards.removeAll(repair.cautions());
			report(checked, "repair", repair.name(), repair.span(), hazards);
		}
	}

	private void report(Checked checked, String kind, String name, Span span, TreeSet<String> hazards) {
		if (!hazards.isEmpty()) {
			String caution = "caution " + String.join(", ", hazards.stream().map(Written::name).toList());
			boolean one = hazards.size() == 1;
			String parts = one ? "a part with hazard " : kind.equals("test") ? "a part with hazards " : "parts with hazards ";
			checked.flaw(this, name + "/" + String.join("+", hazards), span)
					.says("The " + kind + " " + name + " works on " + parts + Words.and(hazards) + " and does not warn of "
							+ (one ? "it" : "them") + "; add \"" + caution + "\".")
					.about(name + String.join("+", hazards))
					.fix(new Fix.AddLine(one ? "Warn of it" : "Warn of them", kind, name, caution)).add();
		}
	}
}
