package org.baywright.analysis.check;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Part;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Skill;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.words.Words;

/** Work with a hazard that is for licensed persons, open to persons without a licence. */
@RuleCheck(id = "skill-below-hazard", severity = Severity.WARNING, summary = "Work with a hazard that takes a licence is open to persons without one")
public final class SkillBelowHazard implements Check {

	@Override
	public void report(Checked checked) {
		RuleBase base = checked.base();
		for (Test test : base.tests()) {
			report(checked, "test", test.name(), base.doneBy(test).skill(), test.span(), test.cautions(), test.part().stream().toList(),
					test.seenWith().map(other -> " at test " + other + ", with which it is seen").orElse(""));
		}
		for (Repair repair : base.repairs()) {
			report(checked, "repair", repair.name(), repair.skill(), repair.span(), repair.cautions(),
					repair.fixes().stream().flatMap(fault -> base.fault(fault).stream()).map(Fault::part).toList(), "");
		}
	}

	private void report(Checked checked, String kind, String name, Skill skill, Span span, Collection<String> cautions,
			List<String> parts, String where) {
		TreeSet<String> hazards = new TreeSet<>(cautions);
		parts.forEach(part -> checked.base().part(part).map(Part::hazards).ifPresent(hazards::addAll));
		hazards.removeIf(hazard -> checked.base().hazard(hazard).map(Hazard::licensed).orElse(List.of()).isEmpty());
		if (skill != Skill.LICENSED && !hazards.isEmpty()) {
			Checked.Draftsman flaw = checked.flaw(this, name + "/" + String.join("+", hazards), span)
					.says("The " + kind + " " + name + " meets " + (hazards.size() == 1 ? "hazard " : "hazards ") + Words.and(hazards)
							+ ", where licensed persons are asked for, and is open to skill " + skill.name().toLowerCase(Locale.ROOT)
							+ "; write \"skill licensed\"" + where + ".");
			for (String hazard : hazards) {
				Hazard found = checked.base().hazard(hazard).orElseThrow();
				flaw.near(found.span(), "hazard " + hazard).about(name + skill + hazard + found.licensed());
			}
			flaw.add();
		}
	}
}
