package org.baywright.presenter.review;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Story;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.difference.Difference;
import org.baywright.analysis.difference.Edit;
import org.baywright.analysis.Effect;
import org.baywright.analysis.difference.JobChange;
import org.baywright.analysis.Reach;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.IndexSet;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Words;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Subject;
import org.baywright.presenter.plan.PlanShown;

/**
 * A difference as a reviewer reads it: what changes for vehicles first, then what was done to the texts.
 *
 * @param headline what it comes to, in one sentence
 * @param sections what there is to tell; none is empty
 * @param note how far it was looked, in one sentence
 */
public record Compared(String headline, List<Section> sections, String note) {

	/** So many causes that must not be confirmed are named one by one. */
	private static final int MOST_CAUSES = 3;

	/**
	 * What belongs together.
	 *
	 * @param title what it is about
	 * @param entries what there is to tell; never empty
	 */
	public record Section(String title, List<Entry> entries) {

		public Section {
			entries = List.copyOf(entries);
		}
	}

	/**
	 * One thing to tell.
	 *
	 * @param text it, in one sentence or a name
	 * @param details what belongs to it, a line each
	 * @param at where to look, as it is now; nowhere if nothing stands there
	 */
	public record Entry(String text, List<String> details, Span at) {

		public Entry {
			details = List.copyOf(details);
		}
	}

	public Compared {
		sections = List.copyOf(sections);
	}

	/** Returns the difference of two states of the rules, as it reads. */
	public static Compared of(RuleBase old, RuleBase now, Difference difference) {
		return of(old, now, difference, List.of());
	}

	/**
	 * As {@link #of(RuleBase, RuleBase, Difference)}, with plans that moved.
	 *
	 * @param plans see {@link #plans}
	 */
	public static Compared of(RuleBase old, RuleBase now, Difference difference, List<Entry> plans) {
		Teller teller = new Teller(old, now);
		List<Section> sections = new ArrayList<>();
		add(sections, "What changes for vehicles", teller.effects(difference, true));
		add(sections, "What follows from that", teller.effects(difference, false));
		add(sections, "What can come out now and could not", difference.reaches().stream().filter(Reach::now).map(teller::reach).toList());
		add(sections, "What could come out and cannot now", difference.reaches().stream().filter(reach -> !reach.now()).map(teller::reach).toList());
		add(sections, "Finished jobs that end otherwise", difference.jobs().stream().map(teller::job).toList());
		add(sections, "New findings", difference.come().stream().map(Compared::flaw).toList());
		add(sections, "Findings that are gone", difference.gone().stream().map(Compared::flaw).toList());
		add(sections, "Plans", plans);
		for (Edit.Weight weight : List.of(Edit.Weight.MEANING, Edit.Weight.WORK, Edit.Weight.WORDS, Edit.Weight.NONE)) {
			add(sections, TITLES.get(weight), difference.edits().stream().filter(edit -> edit.weight() == weight).map(Compared::edit).toList());
		}
		add(sections, "Not decided", difference.undecided().stream().map(question -> entry("It was not decided " + question + ".")).toList());
		return new Compared(headline(difference), sections, note(difference));
	}

	private static final Map<Edit.Weight, String> TITLES = Map.of(Edit.Weight.MEANING, "Edited: what is concluded", Edit.Weight.WORK, "Edited: what is done at the vehicle",
			Edit.Weight.WORDS, "Edited: words, jobs and reviews", Edit.Weight.NONE, "Renamed or moved");

	private static void add(List<Section> sections, String title, List<Entry> entries) {
		if (!entries.isEmpty()) {
			sections.add(new Section(title, entries));
		}
	}

	private static Entry entry(String text, String... details) {
		return new Entry(text, List.of(details), Span.NONE);
	}

	// ---- what it comes to ----------------------------------------------------------------------------------------

	private static String headline(Difference difference) {
		long ends = difference.effects().stream().filter(Effect::changesEnd).count();
		boolean byLaws = difference.effects().stream().noneMatch(effect -> effect.kind() == Effect.Kind.VERDICTS);
		return switch (difference.verdict()) {
		case CHANGED -> ends > 0 ? "Some vehicles end otherwise." : difference.effects().isEmpty() ? "Something else can come out."
				: byLaws ? "No job ends otherwise, but the laws let other vehicles or findings be than before."
				: "No job ends otherwise, but what is known on the way changes.";
		case UNDECIDED -> "It could not be decided whether vehicles end otherwise.";
		case EDITED -> "No vehicle ends otherwise. What is done, or how a rule says it, was edited.";
		case SAME -> difference.edits().isEmpty() ? "No change." : "No change in meaning: only names, words, jobs or places were edited.";
		};
	}

	private static String note(Difference difference) {
		if (difference.more()) {
			return "There are more situations that change than are listed here.";
		}
		return difference.undecided().isEmpty() ? "All situations were compared, by proof. What is not listed comes out as before, and what other rules say anyway stays."
				: "What is not listed comes out as before, apart from what was not decided.";
	}

	// ---- texts ---------------------------------------------------------------------------------------------------

	/** Tells what changes for vehicles, with words of both states. */
	private record Teller(RuleBase old, RuleBase now) {

		List<Entry> effects(Difference difference, boolean direct) {
			return Where.joined(difference.effects().stream().filter(effect -> effect.direct() == direct).map(this::where).toList()).stream().map(Where::entry).toList();
		}

		Where where(Effect effect) {
			List<String> details = new ArrayList<>();
			switch (effect.kind()) {
			case POSSIBLE -> details.add("could not be, by the laws; now it can");
			case IMPOSSIBLE -> details.add("could be; now the laws rule it out");
			default -> {
				effect.lost().forEach(verdict -> details.add("no longer: " + verdict(verdict, old)));
				effect.gained().forEach(verdict -> details.add("now: " + verdict(verdict, now)));
			}
			}
			return where(effect, details);
		}

		private static String verdict(Verdict verdict, RuleBase base) {
			return Say.verdict(new Words(base), verdict);
		}

		private Where where(Effect effect, List<String> details) {
			List<String> like = new ArrayList<>();
			List<String> found = new ArrayList<>();
			Set<String> modules = new TreeSet<>();
			for (Situation.Fact fact : effect.facts()) {
				if (fact.variable().kind() == Variable.Kind.CODE && !fact.values().contains(Variable.UNREAD)) {
					of(fact.variable()).code(fact.variable().name()).ifPresent(code -> modules.add(code.module()));
				}
			}
			for (Situation.Fact fact : effect.facts()) {
				boolean obvious = fact.variable().kind() == Variable.Kind.MODULE && modules.contains(fact.variable().name());
				if (!obvious) {
					(fact.variable().kind() == Variable.Kind.TRAIT ? like : found).add(say(effect, fact));
				}
			}
			effect.open().forEach(variable -> found.add(unlooked(variable)));
			effect.with().forEach(verdict -> found.add("while " + Say.lower(verdict(verdict, now))));
			List<Verdict> causes = effect.without().stream().filter(Verdict::isEnd).toList();
			boolean many = causes.size() > MOST_CAUSES;
			effect.without().stream().filter(verdict -> !many || !causes.contains(verdict)).forEach(verdict -> found.add("unless " + Say.lower(verdict(verdict, now))));
			if (many) {
				found.add("unless another cause is confirmed, one of " + causes.size());
			}
			effect.anyway().forEach(verdict -> found.add("unless " + Say.lower(verdict(verdict, now)) + " anyway"));
			return new Where(effect.families(), this::vehicles, like, found, details);
		}

		private String vehicles(List<String> families) {
			Words words = new Words(now);
			if (families.size() > 1 && families.size() == now.vehicleFamilies().size()) {
				return "All vehicles";
			}
			return Words.and(families.stream().map(words::family).toList());
		}

		/** Returns the rule base that knows what is spoken of, now if it does. */
		private RuleBase of(Variable variable) {
			String name = variable.name();
			boolean known = switch (variable.kind()) {
			case SIGN -> now.sign(name).isPresent();
			case MODULE -> now.module(name).isPresent();
			case CODE -> now.code(name).isPresent();
			case TEST -> now.test(name).isPresent();
			default -> true;
			};
			return known ? now : old;
		}

		private String say(Effect effect, Situation.Fact fact) {
			Domain domain = effect.domains().get(fact.variable());
			String name = fact.variable().name();
			if (domain == null) {
				return Story.say(of(fact.variable()), effect.families().get(0), fact, true);
			}
			String values = Limits.say(fact.values(), domain);
			boolean any = fact.values().equals(IndexSet.all(domain));
			return fact.variable().kind() == Variable.Kind.TRAIT ? name + " " + values
					: new Words(of(fact.variable())).test(name) + ": " + (any ? "any result" : values);
		}

		private String unlooked(Variable variable) {
			Words words = new Words(of(variable));
			return switch (variable.kind()) {
			case SIGN -> "nobody has looked yet for \u201c" + words.sign(variable.name()) + "\u201d";
			case MODULE -> words.module(variable.name()) + " is not read yet";
			case CODE -> "code " + variable.name() + " is not read yet";
			default -> words.test(variable.name()) + " is not done yet";
			};
		}

		Entry reach(Reach reach) {
			return entry(verdict(reach.verdict(), reach.now() ? now : old) + " (" + vehicles(reach.families()) + ")");
		}

		Entry job(JobChange change) {
			return new Entry(change.after().job().name(), List.of("before: " + end(change.before(), old), "now: " + end(change.after(), now)), change.after().job().span());
		}

		private static String end(CaseResult result, RuleBase base) {
			List<String> ends = result.verdicts().stream().filter(Verdict::isEnd).map(verdict -> verdict(verdict, base)).toList();
			String end = ends.isEmpty() ? "no end" : String.join("; ", ends);
			return end + (result.passed() ? ", as the job ended" : result.message().isEmpty() ? "" : " (" + result.message().replaceAll("\\.$", "") + ")");
		}
	}

	private static Entry flaw(Flaw flaw) {
		return new Entry(flaw.severity().name().toLowerCase(Locale.ROOT) + " " + flaw.check() + ": " + flaw.message(), flaw.story(), flaw.span());
	}

	// ---- elements ------------------------------------------------------------------------------------------------

	private static Entry edit(Edit edit) {
		String what = edit.kind().equals(edit.name()) ? edit.kind() : edit.kind() + " " + edit.name();
		List<String> done = new ArrayList<>();
		if (edit.before().isEmpty()) {
			done.add("new");
		} else if (edit.after().isEmpty()) {
			done.add("removed");
		}
		if (edit.isRenamed()) {
			done.add("was called " + edit.before().orElseThrow());
		}
		if (edit.isMoved()) {
			done.add("moved from " + edit.was().file() + " to " + edit.is().file());
		}
		if (!edit.parts().isEmpty()) {
			done.add(Words.and(new LinkedHashSet<>(edit.parts().stream().map(Compared::part).toList())) + " edited");
		}
		return new Entry(what + ": " + String.join("; ", done), List.of(), edit.after().isPresent() ? edit.is() : Span.NONE);
	}

	private static final Map<String, String> PARTS = parts();

	private static Map<String, String> parts() {
		Map<String, String> parts = new LinkedHashMap<>();
		parts.put("scope", "vehicles");
		parts.put("given", "conditions");
		parts.put("outcomes", "results");
		parts.put("domain", "values");
		parts.put("takes", "time");
		parts.put("provenance", "who, when and why");
		parts.put("prepare", "preparation");
		parts.put("states", "vehicle state");
		parts.put("answersIn", "states in which it answers");
		parts.put("disturbs", "what it disturbs");
		parts.put("fits", "parts that are fitted");
		parts.put("seenWith", "the test that it is seen with");
		parts.put("runsIn", "when it is tested");
		parts.put("runsAfter", "when it is tested");
		parts.put("changesForGood", "what changes for good");
		parts.put("verify", "verification");
		parts.put("when", "condition");
		parts.put("then", "what follows");
		return parts;
	}

	private static String part(String component) {
		return PARTS.getOrDefault(component, component.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT));
	}

	// ---- plans ---------------------------------------------------------------------------------------------------

	/**
	 * Works out which plans move, for every complaint of the families that a difference concerns.
	 *
	 * @param cancelled asked now and then whether to stop
	 */
	public static List<Entry> plans(RuleBase old, RuleBase now, Difference difference, BooleanSupplier cancelled) {
		List<Entry> moved = new ArrayList<>();
		if (difference.verdict() == Difference.Verdict.SAME) {
			return moved;
		}
		Words words = new Words(now);
		for (String family : now.vehicleFamilies().stream().map(Family::name).filter(name -> old.family(name).filter(was -> !was.base()).isPresent()).toList()) {
			Set<String> before = names(PlanShown.complaints(old, family));
			for (Subject complaint : PlanShown.complaints(now, family)) {
				String sign = complaint.variable().name();
				if (before.contains(sign)) {
					String text = PlanShown.of(now, family, List.of(sign), cancelled).against(PlanShown.of(old, family, List.of(sign), cancelled));
					if (!text.isEmpty()) {
						moved.add(entry(words.family(family) + ", \u201c" + complaint.title() + "\u201d: " + text));
					}
				}
			}
		}
		return moved;
	}

	private static Set<String> names(Collection<Subject> complaints) {
		Set<String> names = new TreeSet<>();
		complaints.forEach(complaint -> names.add(complaint.variable().name()));
		return names;
	}

	/** Returns the page to print. */
	public String sheet(String title) {
		return ComparedSheet.of(this, title);
	}
}
