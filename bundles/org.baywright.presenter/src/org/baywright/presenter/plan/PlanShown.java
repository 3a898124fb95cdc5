package org.baywright.presenter.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

import org.baywright.analysis.Variable;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Caution;
import org.baywright.presenter.bench.Subject;
import org.baywright.presenter.picture.Picture;

/**
 * The whole plan for a complaint on vehicles of one family: what to do first and after each result, to the end. Where no search
 * of reasonable size finds the best, it begins with what the bench proposes.
 *
 * @param rules the rules that it was worked out by
 * @param title what it is: "Plan for “Does not crank” on Tarn"
 * @param known what else is known of the vehicles, in words
 * @param figures what is to be expected; nothing if there is no plan
 * @param groups faults that no step splits
 * @param tree what to do, as far as more than {@link #SELDOM} of the vehicles come there; nothing if there is no plan
 * @param cautions what comes before anything else, and what can hurt somebody in the steps
 * @param needs what to have at hand; nothing if there is no plan
 * @param bench what the bench, which answers at once, begins with instead; the empty text if it begins alike
 * @param trouble why there is no plan; the empty text if there is one
 */
public record PlanShown(RuleBase rules, String title, List<String> known, Optional<Figures> figures, List<Undivided> groups, Optional<Twig> tree,
		List<Caution> cautions, Optional<Needs> needs, String bench, String trouble) {

	/** Where no more than this share of the vehicles comes, the tree does not follow. */
	public static final double SELDOM = 0.01;

	/**
	 * Faults that no step of the plan tells apart.
	 *
	 * @param faults what they are called
	 * @param share how many vehicles end with them, from 0 to 1
	 * @param text what is to be said of them
	 */
	public record Undivided(List<String> faults, double share, String text) {
		public Undivided {
			faults = List.copyOf(faults);
		}
	}

	public PlanShown {
		known = List.copyOf(known);
		groups = List.copyOf(groups);
		cautions = List.copyOf(cautions);
	}

	/**
	 * Works a plan out.
	 *
	 * @param family name of a vehicle family
	 * @param complaint names of the signs that are there
	 * @param cancelled asked now and then whether to stop
	 * @throws CancellationException if it was stopped
	 */
	public static PlanShown of(RuleBase base, String family, List<String> complaint, BooleanSupplier cancelled) {
		return ofReadings(base, family, complaint.stream().<Reading>map(sign -> new Reading.SignSeen(sign, true, Span.NONE)).toList(), cancelled);
	}

	/**
	 * Works a plan out.
	 *
	 * @param readings what is known of the vehicles: the signs of the complaint, and what they are like
	 * @throws CancellationException if it was stopped
	 */
	public static PlanShown ofReadings(RuleBase base, String family, List<Reading> readings, BooleanSupplier cancelled) {
		return new PlanMaker(base, family, readings).plan(cancelled);
	}

	/** Returns the signs that can be the complaint on vehicles of a family. */
	public static List<Subject> complaints(RuleBase base, String family) {
		return Bench.of(base).choose(family).subjects().stream().filter(subject -> subject.variable().kind() == Variable.Kind.SIGN).toList();
	}

	/** Returns what is to be said of it in sentences: its figures, and what no step splits. */
	public List<String> facts() {
		List<String> facts = new ArrayList<>(figures.map(Figures::sentences).orElse(List.of(trouble)));
		if (!bench.isEmpty()) {
			facts.add("The bench, which answers at once, begins with “" + bench + "” instead: it takes steps that come close to each other for alike, and the cheapest of them first.");
		}
		groups.forEach(group -> facts.add(group.text()));
		return facts;
	}

	/** Returns where the tree ends before the plan does; the empty text if it is told whole. */
	public String leftOut() {
		return tree.filter(Twig::leavesOut).isEmpty() ? ""
				: "“…”: left out here, as no more than " + Figures.of100(SELDOM) + " vehicles come there. The figures count these too.";
	}

	/** Returns the tree as a picture; one without boxes if there is no plan. */
	public Picture picture() {
		return PlanPicture.of(this);
	}

	/** Returns the plan as a page to print, of one file that needs nothing else. */
	public String sheet() {
		return PlanSheet.of(this);
	}

	/**
	 * Returns what a change of the rules moved: "expected 21 → 18 min, worst 95 → 80 min, first step: A → B"; the empty text if it
	 * moved nothing.
	 *
	 * @param before the plan of the same complaint by the rules before
	 */
	public String against(PlanShown before) {
		if (figures.isEmpty() || before.figures.isEmpty()) {
			return trouble.equals(before.trouble) ? "" : figures.isEmpty() ? "there is no plan any more" : "there is a plan now";
		}
		List<String> moved = new ArrayList<>(figures.get().against(before.figures.get()));
		String first = tree.map(Twig::title).orElse("");
		String firstBefore = before.tree.map(Twig::title).orElse("");
		if (!first.equals(firstBefore)) {
			moved.add("first step: " + firstBefore + " → " + first);
		}
		if (groups.size() != before.groups.size()) {
			moved.add("groups that no step splits: " + before.groups.size() + " → " + groups.size());
		}
		return !moved.isEmpty() ? String.join(", ", moved) : tree.equals(before.tree) ? "" : "the same figures by other steps";
	}
}
