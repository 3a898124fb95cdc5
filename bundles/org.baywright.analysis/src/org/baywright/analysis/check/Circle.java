package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Place;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Branch;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Rule;
import org.baywright.model.Severity;

/** A verdict that depends on its own absence. Nothing else is proved about the rules on the circle. */
@RuleCheck(id = "circle", severity = Severity.ERROR, summary = "A verdict depends on its own absence")
public final class Circle implements ProofCheck<List<List<Circle.Step>>> {

	/** One step: the rule that derives the verdict looks at the next verdict on the circle. */
	record Step(Verdict verdict, String rule) {
	}

	@Override
	public List<List<Step>> examine(Prover prover) {
		return prover.program().strata.circles().stream().map(circle -> steps(prover.program(), circle)).toList();
	}

	private static List<Step> steps(Program program, int[] circle) {
		List<Step> steps = new ArrayList<>();
		for (int i = 0; i < circle.length; i++) {
			int next = circle[(i + 1) % circle.length];
			boolean throughAbsence = i == circle.length - 1;
			for (int b : program.derivedBy.get(circle[i])) {
				Branch branch = program.branches.get(b);
				if (looksAt(branch.body(), next, throughAbsence)) {
					steps.add(new Step(program.verdicts.get(circle[i]), program.rules.get(branch.rule()).name()));
					break;
				}
			}
		}
		return steps;
	}

	private static boolean looksAt(Formula formula, int verdict, boolean onAbsence) {
		if (formula instanceof Formula.Stands stands) {
			return stands.verdict() == verdict && (!onAbsence || !stands.stands());
		}
		List<Formula> parts = formula instanceof Formula.All all ? all.parts()
				: formula instanceof Formula.Any any ? any.parts() : List.of();
		return parts.stream().anyMatch(part -> looksAt(part, verdict, onAbsence));
	}

	@Override
	public List<List<Step>> nothing() {
		return List.of();
	}

	@Override
	public boolean needsNoProgram() {
		return true;
	}

	@Override
	public void report(Checked checked) {
		Set<List<Step>> told = new HashSet<>();
		checked.each(this, (part, circles) -> circles.forEach(steps -> {
			if (told.add(steps)) {
				Rule last = checked.base().rule(steps.get(steps.size() - 1).rule()).orElseThrow();
				List<Place> places = new ArrayList<>();
				Checked.Draftsman flaw = checked.flaw(this, steps.get(0).verdict().fault() + "/" + last.name(),
						last.span());
				for (Step step : steps) {
					Rule rule = checked.base().rule(step.rule()).orElseThrow();
					places.add(new Place(rule.span(), "rule " + rule.name() + " decides on " + step.verdict().fault()));
					flaw.about(rule);
				}
				flaw.says("Whether " + steps.get(0).verdict().fault() + " is " + steps.get(0).verdict().kind().word()
						+ " depends in a circle on its own absence, so that nothing can be proved; take a "
						+ "condition out of one of these: "
						+ String.join(", ", steps.stream().map(step -> "rule " + step.rule()).toList()) + ".")
						.shownBy(new Evidence.Core(places)).add();
			}
		}));
	}
}
