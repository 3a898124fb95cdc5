package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Variable;
import org.baywright.model.Module;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.planner.Diagnosis;
import org.baywright.planner.Position;

/** Puts the steps of a planner into words, on vehicles of one family. */
public final class StepWords {

	private final RuleBase base;
	private final Words words;
	private final Subjects subjects;

	public StepWords(RuleBase base, String family) {
		this.base = base;
		words = new Words(base);
		subjects = new Subjects(base, family);
	}

	/** Returns what to do: "Read: Body computer". */
	public String title(Position.Step step) {
		if (!(step instanceof Diagnosis.Finding finding)) {
			return "Read all modules at once";
		}
		Variable variable = finding.variable();
		return switch (variable.kind()) {
		case SIGN -> "Look or ask: " + words.sign(variable.name());
		case TRAIT -> "Look up on the vehicle: " + name(variable);
		case TEST -> finding.isSeen() ? name(variable) : base.test(variable.name()).map(base::doneBy).map(Test::title).orElse(name(variable));
		case MODULE -> "Read: " + words.module(variable.name());
		case CODE -> finding.isSeen() ? "Seen in the same reading: " + name(variable) : "Read: " + Doing.module(base, variable).map(Module::title).orElse(name(variable));
		};
	}

	/** Returns what something that can be found out is called. */
	public String name(Variable variable) {
		return subjects.subject(variable).map(Subject::title).orElse(variable.name());
	}

	/** Returns what can hurt somebody who takes a step. */
	public List<Caution> cautions(Position.Step step) {
		return step instanceof Diagnosis.Finding finding && finding.variable().kind() == Variable.Kind.TEST
				? base.test(finding.variable().name()).map(base::doneBy).map(test -> Caution.of(base, test.hazards(base))).orElse(List.of()) : List.of();
	}

	/** Returns the module that is asked to find something out; nothing for what no module tells. */
	public static Optional<Module> module(RuleBase base, Variable variable) {
		return Doing.module(base, variable);
	}

	/** Returns how long work takes: "22 min of work and 40 min of waiting". */
	public static String time(double minutes, double waiting) {
		return waiting < 1 ? minutes(minutes) : minutes(minutes) + " of work and " + minutes(waiting) + " of waiting";
	}

	/** Returns a duration in whole minutes, at least one. */
	public static String minutes(double minutes) {
		return Telling.minutes(BigDecimal.valueOf(Math.max(1, Math.round(minutes))));
	}
}
