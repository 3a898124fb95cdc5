package org.baywright.cli.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Variable;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Subject;

/**
 * What is known of a job before the first question.
 *
 * @param bench the bench with it
 * @param wrong why it cannot be so; the empty text if it can
 */
public record Opening(Bench bench, String wrong) {

	/**
	 * Puts on the bench what is known.
	 *
	 * @param vehicle the family, by name or title; it may be missing where it is asked for
	 * @param traits each a name or title, the sign = and a value
	 * @param complaints signs that are there, by name or title
	 */
	public static Opening of(RuleBase rules, Optional<String> vehicle, List<String> traits, List<String> complaints) {
		List<Named> families = Named.all(rules.vehicleFamilies(), Family::name, Family::title);
		Bench bench = Bench.of(rules);
		if (families.isEmpty()) {
			return new Opening(bench, "These rules are for no vehicle. Write a vehicle family first.");
		} else if (vehicle.isPresent()) {
			Optional<String> family = Named.find(vehicle.get(), families);
			if (family.isEmpty()) {
				return new Opening(bench, "There is no vehicle family " + vehicle.get() + ". " + Named.advice(vehicle.get(), families, there(families)));
			}
			bench = bench.choose(family.get());
		}
		Opening opening = new Opening(bench, "");
		if (bench.now().family().isEmpty() && traits.size() + complaints.size() > 0) {
			return new Opening(bench, "Name the vehicle too, with --vehicle. " + there(families));
		}
		for (String trait : traits) {
			opening = opening.trait(trait);
		}
		for (String complaint : complaints) {
			opening = opening.enter(complaint, Variable.Kind.SIGN, "sign", "present");
		}
		return opening;
	}

	private Opening trait(String text) {
		int equals = text.indexOf('=');
		return equals < 0 ? and(bench, "Write --with " + text + "=VALUE to say what the vehicle is like.")
				: enter(text.substring(0, equals).strip(), Variable.Kind.TRAIT, "trait", text.substring(equals + 1).strip());
	}

	private Opening enter(String what, Variable.Kind kind, String called, String value) {
		List<Subject> subjects = bench.subjects().stream().filter(subject -> subject.variable().kind() == kind).toList();
		List<Named> known = Named.all(subjects, subject -> subject.variable().name(), Subject::title);
		Optional<Subject> subject = Named.find(what, known).flatMap(name -> subjects.stream().filter(each -> each.variable().name().equals(name)).findFirst());
		if (subject.isEmpty()) {
			return and(bench, bench.vehicle() + " has no " + called + " " + what + ". " + Named.advice(what, known, there(known)));
		}
		if (kind == Variable.Kind.TRAIT && bench.lines().stream().anyMatch(line -> line.variable().equals(subject.get().variable()))) {
			return and(bench, "The " + called + " " + what + " is given twice.");
		}
		Bench next = bench.enter(subject.get().variable(), Dialogue.choice(subject.get(), value).orElse(value));
		boolean refused = next.now().equals(bench.now()) && !next.message().isEmpty();
		return refused ? and(bench, subject.get().title() + " " + value + ": " + next.message()) : and(next.quiet(), "");
	}

	/** The first thing that is wrong is told. */
	private Opening and(Bench next, String message) {
		return new Opening(next, wrong.isEmpty() ? message : wrong);
	}

	private static String there(List<Named> known) {
		List<String> names = new ArrayList<>(known.stream().map(Named::name).sorted().toList());
		return names.isEmpty() ? "There are none." : "There are: " + String.join(", ", names) + ".";
	}
}
