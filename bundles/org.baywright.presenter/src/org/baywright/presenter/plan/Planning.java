package org.baywright.presenter.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

import org.baywright.model.RuleBase;

/**
 * A screen on which a plan is looked at while the rules change. Immutable: a command returns another one.
 *
 * @param base the rules
 * @param families the families that can be chosen
 * @param family the chosen one; the empty text if there is none
 * @param complaints the signs that can be chosen for it
 * @param complaint the chosen one; the empty text if there is none
 * @param shown the plan that is shown; nothing before one was worked out
 * @param moved what the last change of the rules moved; the empty text for nothing
 */
public record Planning(RuleBase base, List<Choice> families, String family, List<Choice> complaints, String complaint, Optional<PlanShown> shown, String moved) {

	/** What can be chosen, with what it is called. */
	public record Choice(String name, String title) {
	}

	public Planning {
		families = List.copyOf(families);
		complaints = List.copyOf(complaints);
	}

	/** Begins with the first complaint of the first family. */
	public static Planning of(RuleBase base) {
		return chosen(base, "", "", Optional.empty());
	}

	private static Planning chosen(RuleBase base, String family, String complaint, Optional<PlanShown> shown) {
		List<Choice> families = base.vehicleFamilies().stream().map(each -> new Choice(each.name(), each.title())).toList();
		String of = kept(family, families);
		List<Choice> complaints = of.isEmpty() ? List.of() : PlanShown.complaints(base, of).stream().map(sign -> new Choice(sign.variable().name(), sign.title())).toList();
		return new Planning(base, families, of, complaints, kept(complaint, complaints), shown, "");
	}

	private static String kept(String name, List<Choice> choices) {
		return choices.stream().map(Choice::name).filter(name::equals).findFirst().or(() -> choices.stream().map(Choice::name).findFirst()).orElse("");
	}

	/** Chooses a family; the complaint stays if its vehicles can have it. */
	public Planning choose(String other) {
		return chosen(base, other, complaint, Optional.empty());
	}

	/** Chooses a complaint. */
	public Planning complain(String other) {
		return chosen(base, family, other, Optional.empty());
	}

	/** Goes on with changed rules; the plan that was shown is what the next one is held against. */
	public Planning turn(RuleBase changed) {
		Planning next = chosen(changed, family, complaint, shown);
		boolean same = next.family.equals(family) && next.complaint.equals(complaint);
		return same ? next : new Planning(changed, next.families, next.family, next.complaints, next.complaint, Optional.empty(), "");
	}

	/**
	 * Works the plan out.
	 *
	 * @throws CancellationException if it was stopped
	 */
	public PlanShown plan(BooleanSupplier cancelled) {
		return PlanShown.of(base, family, complaint.isEmpty() ? List.of() : List.of(complaint), cancelled);
	}

	/** Shows a plan that was worked out, and what moved against the one before. */
	public Planning show(PlanShown plan) {
		return new Planning(base, families, family, complaints, complaint, Optional.of(plan), shown.map(plan::against).orElse(""));
	}

	/** Returns what is told above the picture: what moved first, then the figures and the cautions. */
	public List<String> told() {
		List<String> told = new ArrayList<>();
		if (!moved.isEmpty()) {
			told.add("The last change of the rules: " + moved + ".");
		}
		shown.ifPresent(plan -> {
			told.addAll(plan.facts());
			plan.cautions().forEach(caution -> told.add("Caution, " + caution.title() + ": " + String.join(" ", caution.cautions())));
		});
		return told;
	}
}
