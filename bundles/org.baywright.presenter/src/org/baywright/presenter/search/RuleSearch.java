package org.baywright.presenter.search;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.baywright.model.Case;
import org.baywright.model.Chain;
import org.baywright.model.Code;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Law;
import org.baywright.model.Module;
import org.baywright.model.Named;
import org.baywright.model.Part;
import org.baywright.model.Reading;
import org.baywright.model.Remark;
import org.baywright.model.Repair;
import org.baywright.model.Review;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.VerifyStep;
import org.baywright.model.Workshop;
import org.baywright.presenter.Say;
import org.baywright.presenter.search.Hit.Element;

/**
 * A search for rules by what they speak of. All words must stand in the name or title of a thing, in capitals or not, each
 * anywhere; found are the thing and all rules, laws, jobs and declarations that speak of it.
 *
 * @param words what was typed
 * @param subjects what the words may be about
 */
public record RuleSearch(String words, Set<Subject> subjects) {

	public RuleSearch {
		words = words.strip();
		subjects = Collections.unmodifiableSet(subjects.isEmpty() ? EnumSet.noneOf(Subject.class) : EnumSet.copyOf(subjects));
	}

	/** Returns why there is nothing to search for yet, in one sentence; nothing if the search can begin. */
	public Optional<String> refusal() {
		if (words.isEmpty()) {
			return Optional.of("Type a part of a name or title to search for.");
		}
		return subjects.isEmpty() ? Optional.of("Choose at least one kind of thing to search for.") : Optional.empty();
	}

	/** Returns how many places were found, as the headline of a list: "“volt” in the rules: 12 places". */
	public String headline(int places) {
		return places == 0 ? "Nothing in the rules has to do with \u201c" + words + "\u201d. Try a shorter part of the word, or more kinds."
				: "\u201c" + words + "\u201d in the rules: " + Say.count(places, "place");
	}

	/** Returns what is found, sorted by place. */
	public List<Hit> in(RuleBase base) {
		return refusal().isPresent() ? List.of() : new Seeking(base).hits();
	}

	/** A thing that rules can speak of; people have no element of their own. */
	private record Thing(String word, String name) implements Comparable<Thing> {

		static Thing of(Element element, String name) {
			return new Thing(element.word(), name);
		}

		@Override
		public int compareTo(Thing other) {
			int byWord = word.compareTo(other.word);
			return byWord != 0 ? byWord : name.compareTo(other.name);
		}
	}

	/** One search through one rule base. */
	private final class Seeking {

		private static final String PERSON = "person";

		private final RuleBase base;
		private final Map<Thing, String> meant = new TreeMap<>();
		private final List<Hit> hits = new ArrayList<>();

		Seeking(RuleBase base) {
			this.base = base;
		}

		List<Hit> hits() {
			mean(Subject.SIGN, Element.SIGN, base.signs());
			mean(Subject.TEST, Element.TEST, base.tests());
			mean(Subject.FAULT, Element.FAULT, base.faults());
			base.codes().forEach(code -> mean(Subject.CODE, Element.CODE, code, code.text().display()));
			mean(Subject.PART, Element.PART, base.parts());
			mean(Subject.MODULE, Element.MODULE, base.modules());
			mean(Subject.FAMILY, Element.FAMILY, base.families());
			mean(Subject.OTHER, Element.STATE, base.states());
			mean(Subject.OTHER, Element.TOOL, base.tools());
			base.workshop().ifPresent(workshop -> mean(Subject.OTHER, Element.WORKSHOP, "", "", workshop.title()));
			mean(Subject.OTHER, Element.HAZARD, base.hazards());
			mean(Subject.OTHER, Element.RULE, base.rules());
			mean(Subject.OTHER, Element.REPAIR, base.repairs());
			mean(Subject.OTHER, Element.JOB, base.cases());
			base.families().forEach(family -> mean(Subject.OTHER, Element.TRAIT, family.traits()));
			base.laws().forEach(law -> mean(Subject.OTHER, Element.LAW, law.title(), "", law.title()));
			base.rules().forEach(rule -> rule.provenance().author().ifPresent(this::meanPerson));
			base.reviews().forEach(review -> meanPerson(review.reviewer()));
			base.remarks().forEach(remark -> meanPerson(remark.author()));
			base.reviewers().forEach(reviewer -> meanPerson(reviewer.name()));
			find();
			Collections.sort(hits);
			return hits;
		}

		private void mean(Subject subject, Element element, Collection<? extends Named> all) {
			all.forEach(named -> mean(subject, element, named, ""));
		}

		private void mean(Subject subject, Element element, Named named, String alsoCalled) {
			mean(subject, element, named.name(), alsoCalled, named.title());
		}

		private void mean(Subject subject, Element element, String name, String alsoCalled, String title) {
			if (subjects.contains(subject) && Say.holds(name + " " + alsoCalled + " " + title, words)) {
				meant.put(Thing.of(element, name), element.word() + " " + title);
			}
		}

		private void meanPerson(String name) {
			if (subjects.contains(Subject.AUTHOR) && Say.holds(name, words)) {
				meant.put(new Thing(PERSON, name), "by " + name);
			}
		}

		// ---- who speaks of what ----------------------------------------------------------------------------------

		private void find() {
			base.families().forEach(family -> {
				hit(Element.FAMILY, family, spoken(family));
				family.traits().forEach(trait -> hit(Element.TRAIT, trait, new TreeSet<>()));
			});
			base.states().forEach(state -> hit(Element.STATE, state, new TreeSet<>()));
			base.tools().forEach(tool -> hit(Element.TOOL, tool, new TreeSet<>()));
			base.workshop().ifPresent(workshop -> hit(Element.WORKSHOP, "", workshop.title().isEmpty() ? "of the project" : workshop.title(), workshop.span(), spoken(workshop)));
			base.hazards().forEach(hazard -> hit(Element.HAZARD, hazard, new TreeSet<>()));
			base.signs().forEach(sign -> hit(Element.SIGN, sign, new TreeSet<>()));
			base.modules().forEach(module -> hit(Element.MODULE, module, spoken(module)));
			base.codes().forEach(code -> hit(Element.CODE, code.name(), code.title() + " (" + code.text().display() + ")", code.span(), spoken(code)));
			base.parts().forEach(part -> hit(Element.PART, part, spoken(part)));
			base.faults().forEach(fault -> hit(Element.FAULT, fault, spoken(fault)));
			base.tests().forEach(test -> hit(Element.TEST, test, spoken(test)));
			for (Chain chain : base.chains()) {
				Set<Thing> spoken = new TreeSet<>();
				chain.rules().forEach(rule -> spoken.addAll(spoken(rule)));
				hit(Element.RULE, chain, spoken);
			}
			base.rules().stream().filter(rule -> !base.isOfChain(rule.name())).forEach(rule -> hit(Element.RULE, rule, spoken(rule)));
			base.repairs().forEach(repair -> hit(Element.REPAIR, repair, spoken(repair)));
			base.cases().forEach(job -> hit(Element.JOB, job, spoken(job)));
			base.laws().forEach(law -> hit(Element.LAW, law.title(), law.title(), law.span(), spoken(law)));
			base.reviews().forEach(review -> hit(Element.REVIEW, "", "of " + base.rule(review.rule()).map(Rule::title).orElse(review.rule()),
					review.span(), spoken(review)));
			base.remarks().forEach(remark -> hit(Element.REMARK, "", "on " + remark.rule().map(rule -> base.rule(rule).map(Rule::title).orElse(rule))
					.orElse("the change “" + remark.change() + "”"), remark.span(), spoken(remark)));
			base.reviewers().forEach(reviewer -> hit(Element.REVIEWER, "", reviewer.name(), reviewer.span(), new TreeSet<>(Set.of(new Thing(PERSON, reviewer.name())))));
		}

		private void hit(Element element, Named named, Set<Thing> spoken) {
			hit(element, named.name(), named.title(), named.span(), spoken);
		}

		private void hit(Element element, String name, String title, Span span, Set<Thing> spoken) {
			if (meant.containsKey(Thing.of(element, name))) {
				hits.add(new Hit(element, title, "", span));
				return;
			}
			List<String> because = spoken.stream().filter(meant::containsKey).map(meant::get).distinct().toList();
			if (!because.isEmpty()) {
				hits.add(new Hit(element, title, String.join(", ", because), span));
			}
		}

		private Set<Thing> spoken(Family family) {
			return add(add(new TreeSet<>(), Element.FAMILY, family.parent().stream().toList()), Element.FAMILY, family.systems());
		}

		private Set<Thing> spoken(Workshop workshop) {
			Set<Thing> things = add(new TreeSet<>(), Element.TOOL, workshop.lacks());
			Stream.concat(workshop.each().stream(), workshop.all().stream()).forEach(scan -> add(things, Element.TOOL, scan.tools()));
			return things;
		}

		private Set<Thing> spoken(Module module) {
			return states(add(add(new TreeSet<>(), Element.FAMILY, module.families()), Element.TOOL, module.tools()), module.answersIn());
		}

		private Set<Thing> spoken(Code code) {
			return add(new TreeSet<>(), Element.MODULE, List.of(code.module()));
		}

		private Set<Thing> spoken(Part part) {
			return add(new TreeSet<>(), Element.HAZARD, part.hazards());
		}

		private Set<Thing> spoken(Fault fault) {
			return add(new TreeSet<>(), Element.PART, List.of(fault.part()));
		}

		private Set<Thing> spoken(Test test) {
			Set<Thing> things = states(new TreeSet<>(), test.states());
			add(things, Element.TEST, test.seenWith().stream().toList());
			add(things, Element.PART, test.part().stream().toList());
			add(things, Element.TOOL, test.tools());
			add(things, Element.HAZARD, test.cautions());
			for (Element element : List.of(Element.SIGN, Element.TEST, Element.CODE, Element.MODULE)) {
				// the names of these share one name space
				add(things, element, test.disturbs());
			}
			return things;
		}

		private Set<Thing> spoken(Rule rule) {
			Set<Thing> things = states(new TreeSet<>(), rule.states());
			add(things, Element.FAMILY, rule.scope().families());
			add(things, Element.FAMILY, rule.scope().except());
			if (!rule.scope().families().isEmpty()) {
				// written for a family that others build on, it speaks of these too
				add(things, Element.FAMILY, base.reach(rule.scope()));
			}
			rule.scope().where().ifPresent(where -> condition(things, where));
			rule.given().forEach(given -> condition(things, given));
			rule.test().ifPresent(test -> test(things, test));
			rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(said -> {
				if (said instanceof Conclusion.OnFault on) {
					fault(things, on.fault());
				}
			}));
			rule.provenance().author().ifPresent(author -> things.add(new Thing(PERSON, author)));
			return things;
		}

		private Set<Thing> spoken(Law law) {
			Set<Thing> things = add(new TreeSet<>(), Element.FAMILY, law.families());
			condition(things, law.when());
			condition(things, law.then());
			return things;
		}

		private Set<Thing> spoken(Repair repair) {
			Set<Thing> things = add(new TreeSet<>(), Element.HAZARD, repair.cautions());
			add(things, Element.TOOL, repair.tools());
			repair.fixes().forEach(fault -> fault(things, fault));
			for (VerifyStep step : repair.verify()) {
				step.visit(
						(VerifyStep.Clear clear) -> add(things, Element.MODULE, List.of(clear.module())),
						(VerifyStep.Cycle cycle) -> add(things, Element.STATE, List.of(cycle.state())),
						(VerifyStep.Put put) -> states(things, List.of(put.setting())),
						(VerifyStep.Read read) -> add(things, Element.MODULE, List.of(read.module())),
						(VerifyStep.Expect expect) -> code(things, expect.code()),
						(VerifyStep.ExpectSign expect) -> add(things, Element.SIGN, List.of(expect.sign())),
						(VerifyStep.Prepare prepare) -> { },
						(VerifyStep.Repeat repeat) -> test(things, repeat.test()),
						(VerifyStep.RepeatWhatConfirmed repeat) -> { });
			}
			return things;
		}

		private Set<Thing> spoken(Case job) {
			Set<Thing> things = add(new TreeSet<>(), Element.FAMILY, base.lineage(job.family()));
			job.traits().forEach(trait -> add(things, Element.TRAIT, List.of(trait.subject())));
			for (Reading found : job.found()) {
				if (found instanceof Reading.SignSeen) {
					add(things, Element.SIGN, List.of(found.subject()));
				} else if (found instanceof Reading.CodeRead) {
					code(things, found.subject());
				} else if (found instanceof Reading.ModuleAsked) {
					add(things, Element.MODULE, List.of(found.subject()));
				} else {
					test(things, found.subject());
				}
			}
			job.causes().forEach(fault -> fault(things, fault));
			return things;
		}

		private Set<Thing> spoken(Remark remark) {
			Set<Thing> things = add(new TreeSet<>(), Element.RULE, remark.rule().stream().toList());
			things.add(new Thing(PERSON, remark.author()));
			return things;
		}

		private Set<Thing> spoken(Review review) {
			Set<Thing> things = add(new TreeSet<>(), Element.RULE, List.of(review.rule()));
			things.add(new Thing(PERSON, review.reviewer()));
			return things;
		}

		private void condition(Set<Thing> things, Condition condition) {
			condition.eachAtom(atom -> atom.visit(
					(Condition.TraitIs is) -> add(things, Element.TRAIT, List.of(is.trait())),
					(Condition.SignIs is) -> add(things, Element.SIGN, List.of(is.sign())),
					(Condition.TestIs is) -> test(things, is.test()),
					(Condition.CodeIs is) -> code(things, is.code()),
					(Condition.ModuleIs is) -> add(things, Element.MODULE, List.of(is.module())),
					(Condition.VerdictIs is) -> fault(things, is.fault()),
					(Condition.Unexplained is) -> add(things, Element.SIGN, List.of(is.sign()))));
		}

		private void test(Set<Thing> things, String name) {
			add(things, Element.TEST, List.of(name));
			base.test(name).flatMap(Test::part).ifPresent(part -> add(things, Element.PART, List.of(part)));
		}

		private void fault(Set<Thing> things, String name) {
			add(things, Element.FAULT, List.of(name));
			base.fault(name).ifPresent(fault -> add(things, Element.PART, List.of(fault.part())));
		}

		private void code(Set<Thing> things, String name) {
			add(things, Element.CODE, List.of(name));
			base.code(name).ifPresent(code -> add(things, Element.MODULE, List.of(code.module())));
		}

		private Set<Thing> states(Set<Thing> things, Collection<StateSetting> settings) {
			return add(things, Element.STATE, settings.stream().map(StateSetting::state).toList());
		}

		private Set<Thing> add(Set<Thing> things, Element element, Collection<String> names) {
			names.forEach(name -> things.add(Thing.of(element, name)));
			return things;
		}
	}
}
