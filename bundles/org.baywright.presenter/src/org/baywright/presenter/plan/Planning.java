package org.baywright.presenter.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

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
 * @param before what it is held against: the plan as it was when it was chosen, or when the user said so
 */
public record Planning(RuleBase base, List<Choice> families, String family, List<Choice> complaints, String complaint, Optional<PlanShown> shown,
		Optional<PlanShown> before) {

	/** What can be chosen, with what it is called. */
	public record Choice(String name, String title) {
	}

	public Planning {
		families = List.copyOf(families);
		complaints = List.copyOf(complaints);
	}

	/** Begins with the first complaint of the first family. */
	public static Planning of(RuleBase base) {
		return chosen(base, "", "");
	}

	private static Planning chosen(RuleBase base, String family, String complaint) {
		List<Choice> families = base.vehicleFamilies().stream().map(each -> new Choice(each.name(), each.title())).toList();
		String of = kept(family, families);
		List<Choice> complaints = of.isEmpty() ? List.of() : PlanShown.complaints(base, of).stream().map(sign -> new Choice(sign.variable().name(), sign.title())).toList();
		return new Planning(base, families, of, complaints, kept(complaint, complaints), Optional.empty(), Optional.empty());
	}

	private static String kept(String name, List<Choice> choices) {
		return choices.stream().map(Choice::name).filter(name::equals).findFirst().or(() -> choices.stream().map(Choice::name).findFirst()).orElse("");
	}

	/** Chooses a family; the complaint stays if its vehicles can have it. */
	public Planning choose(String other) {
		return chosen(base, other, complaint);
	}

	/** Chooses a complaint. */
	public Planning complain(String other) {
		return chosen(base, family, other);
	}

	/** Goes on with changed rules. */
	public Planning turn(RuleBase changed) {
		Planning next = chosen(changed, family, complaint);
		boolean same = next.family.equals(family) && next.complaint.equals(complaint);
		return same ? new Planning(changed, next.families, family, next.complaints, complaint, shown, before) : next;
	}

	/** Holds what comes against the plan that is shown now. */
	public Planning hold() {
		return new Planning(base, families, family, complaints, complaint, shown, shown);
	}

	/**
	 * Works the plan out.
	 *
	 * @throws CancellationException if it was stopped
	 */
	public PlanShown plan(BooleanSupplier cancelled) {
		return PlanShown.of(base, family, complaint.isEmpty() ? List.of() : List.of(complaint), cancelled);
	}

	/** Shows a plan that was worked out. */
	public Planning show(PlanShown plan) {
		return new Planning(base, families, family, complaints, complaint, Optional.of(plan), before.or(() -> Optional.of(plan)));
	}

	/** Returns what changes of the rules have moved; the empty text for nothing. */
	public String moved() {
		return shown.isPresent() && before.isPresent() ? shown.get().against(before.get()) : "";
	}

	/** Returns what is told above the picture: what moved first, then the cautions and the figures. */
	public List<String> told() {
		List<String> told = new ArrayList<>();
		if (!moved().isEmpty()) {
			told.add("Moved by changes of the rules: " + moved() + ".");
		}
		shown.ifPresent(plan -> {
			plan.cautions().forEach(caution -> told.add("Caution, " + caution.title() + ": " + String.join(" ", caution.cautions())));
			told.addAll(plan.facts());
			Stream.of(plan.leftOut()).filter(text -> !text.isEmpty()).forEach(told::add);
		});
		return told;
	}
}
