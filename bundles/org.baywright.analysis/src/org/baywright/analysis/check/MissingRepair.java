package org.baywright.analysis.check;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Fault;
import org.baywright.model.Meaning;
import org.baywright.model.Repair;
import org.baywright.model.Scope;
import org.baywright.model.Severity;
import org.baywright.model.Skill;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.model.VerifyStep;
import org.baywright.model.words.Names;
import org.baywright.model.write.RuleWriter;

/**
 * A fault that rules can confirm on some vehicle for which no repair is meant. Where there is no repair at all the text
 * shows it; where the repairs are for other vehicles the smallest vehicle does.
 */
@RuleCheck(id = "missing-repair", severity = Severity.WARNING, summary = "A fault can be confirmed but no repair puts it right")
public final class MissingRepair implements ProofCheck<List<MissingRepair.Missing>> {

	/** A fault that is confirmed on a vehicle for which no repair is meant. */
	record Missing(String fault, Situation situation) {
	}

	@Override
	public List<Missing> examine(Prover prover) {
		List<Missing> missing = new ArrayList<>();
		for (int number = 0; number < prover.program().verdicts.size(); number++) {
			Verdict verdict = prover.program().verdicts.get(number);
			Collection<Formula> mends = prover.program().mendOf.get(number).values();
			boolean limited = !mends.contains(Formula.TRUE) && !prover.base().repairsOf(verdict.fault()).isEmpty();
			if (limited && verdict.kind() == VerdictKind.CONFIRMED) {
				int[] goals = { prover.encoding().verdict(number), -prover.encoding().literal(new Formula.Any(List.copyOf(mends)), false) };
				Answer answer = prover.encoding().ask(goals);
				if (answer == Answer.UNDECIDED) {
					prover.undecided("whether " + verdict.fault() + " is confirmed on a vehicle for which no repair is meant");
				} else if (answer == Answer.YES) {
					prover.smallestWith(goals).ifPresent(situation -> missing.add(new Missing(verdict.fault(), situation)));
				}
			}
		}
		return missing;
	}

	@Override
	public List<Missing> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		Set<String> confirmable = Confirming.faults(checked);
		for (Fault fault : checked.base().faults()) {
			if (confirmable.contains(fault.name()) && checked.base().repairsOf(fault.name()).isEmpty()) {
				checked.flaw(this, fault.name(), fault.span())
						.says("Rules can confirm " + ClashReport.say(checked, fault.name())
								+ ", but no repair puts it right; write the repair.")
						.about(fault.name()).fix(addRepair(checked, fault.name(), Scope.EVERY)).add();
			}
		}
		Smallest<Missing> smallest = new Smallest<>();
		checked.each(this, (part, found) -> found.forEach(missing -> smallest.add(missing.fault(), part, missing, missing.situation())));
		smallest.each((key, part, missing) -> {
			String family = part.families().get(0);
			Checked.Draftsman flaw = checked.flaw(this, missing.fault(), checked.base().fault(missing.fault()).orElseThrow().span())
					.says("Rules can confirm " + ClashReport.say(checked, missing.fault())
							+ " on a vehicle for which no repair is meant; write a repair for it, or let one that is there reach it.")
					.shownBy(checked.witness(part, missing.situation())).about(missing.fault())
					.fix(addRepair(checked, missing.fault(), new Scope(List.of(family), List.of(), Optional.empty(), Span.NONE)));
			checked.base().repairsOf(missing.fault()).forEach(repair -> flaw.near(repair.span(), "repair " + repair.name() + " is for other vehicles")
					.about(repair.name() + Meaning.text(repair.scope())));
			flaw.add();
		});
	}

	/** Returns a repair that is verified; what is done is for its author to write. */
	private static Fix addRepair(Checked checked, String fault, Scope scope) {
		String name = Names.free(fault.replace('.', '_'), taken -> checked.base().repair(taken).isPresent());
		return new Fix.AddElement("Add a repair", new RuleWriter(checked.base()).text(new Repair(name, title(checked, fault), scope, List.of(fault), Optional.empty(),
				List.of(), List.of(""), List.of(), List.of(), BigDecimal.ZERO, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), true,
				List.of(new VerifyStep.RepeatWhatConfirmed(Span.NONE)), Span.NONE)));
	}

	/** Returns a title that says of which fault it is the repair; the author says better what is done. */
	private static String title(Checked checked, String fault) {
		return "Repair: " + checked.base().fault(fault).map(Fault::title).orElse(fault);
	}
}
