package org.baywright.analysis.difference;

import java.lang.reflect.RecordComponent;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.baywright.model.Acceptance;
import org.baywright.model.Exclusive;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Named;
import org.baywright.model.Remark;
import org.baywright.model.Review;
import org.baywright.model.Reviewer;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.SignOff;
import org.baywright.model.Span;
import org.baywright.model.Workshop;

/** Sets the elements of two rule bases beside each other: those that mean the same first, then those with one name. */
final class Elements {

	/** Parts on which verdicts rest. */
	private static final Set<String> DECIDES = Set.of("scope", "given", "test", "outcomes", "domain", "intermittent", "families", "module", "traits", "systems", "parent",
			"kind", "when", "then", "points", "beyond", "answersIn", "seenWith", "vins");
	private static final Set<String> KNOWN_BY_MEANING = Set.of("rule", "chain");
	private static final Set<String> BESIDE = Set.of("job", "sign_off", "reviewer", "review", "remark", "acceptance");

	private final Renames renames;
	private final List<Edit> edits = new ArrayList<>();

	private Elements(Renames renames) {
		this.renames = renames;
	}

	/**
	 * Returns what was done to elements, sorted by kind and name; what only moved within its file is not listed.
	 *
	 * @param old the rule base as it was, with the names that it had
	 * @param renamed the same with the names of now
	 */
	static List<Edit> between(RuleBase old, RuleBase renamed, RuleBase now, Renames renames) {
		Elements elements = new Elements(renames);
		Map<String, Function<RuleBase, List<? extends Record>>> kinds = new LinkedHashMap<>();
		kinds.put("family", RuleBase::families);
		kinds.put("state", RuleBase::states);
		kinds.put("tool", RuleBase::tools);
		kinds.put("workshop", RuleBase::workshops);
		kinds.put("hazard", RuleBase::hazards);
		kinds.put("module", RuleBase::modules);
		kinds.put("code", RuleBase::codes);
		kinds.put("sign", RuleBase::signs);
		kinds.put("part", RuleBase::parts);
		kinds.put("exclusive", RuleBase::exclusives);
		kinds.put("test", RuleBase::tests);
		kinds.put("law", base -> ownLaws(base));
		kinds.put("chain", RuleBase::chains);
		kinds.put("rule", base -> base.rules().stream().filter(rule -> !base.isOfChain(rule.name())).toList());
		kinds.put("repair", RuleBase::repairs);
		kinds.put("job", RuleBase::cases);
		kinds.put("sign_off", RuleBase::signOffs);
		kinds.put("reviewer", RuleBase::reviewers);
		kinds.put("review", RuleBase::reviews);
		kinds.put("remark", RuleBase::remarks);
		kinds.put("acceptance", RuleBase::acceptances);
		kinds.forEach((kind, all) -> elements.match(kind, all.apply(old), all.apply(renamed), all.apply(now)));
		elements.edits.sort(Comparator.comparing((Edit edit) -> List.copyOf(kinds.keySet()).indexOf(edit.kind())).thenComparing(Edit::name)
				.thenComparing(edit -> edit.before().orElse("")));
		return elements.edits;
	}

	/**
	 * An element.
	 *
	 * @param says it, with the names of now
	 * @param name what it is called in its own rule base
	 * @param called what it would be called now
	 */
	private record Element(Record says, String name, String called, Span span) {

		private String words() {
			return called + Contents.of(says, true);
		}

		private String meaning() {
			return says instanceof Rule rule ? Meaning.text(rule) : Contents.of(says, false).toString();
		}
	}

	private void match(String kind, List<? extends Record> old, List<? extends Record> renamed, List<? extends Record> now) {
		List<Element> before = new ArrayList<>();
		// what did not move at all, which is nearly everything, is found without looking into it
		Map<Record, Integer> stayed = new HashMap<>();
		now.forEach(element -> stayed.merge(element, 1, Integer::sum));
		Map<Record, Integer> same = new HashMap<>();
		for (int i = 0; i < old.size(); i++) {
			if (old.get(i).equals(renamed.get(i)) && stayed.merge(renamed.get(i), 0, Integer::sum) > 0) {
				stayed.merge(renamed.get(i), -1, Integer::sum);
				same.merge(renamed.get(i), 1, Integer::sum);
				continue;
			}
			before.add(new Element(renamed.get(i), name(old.get(i)), renames.now(kind, name(renamed.get(i))), span(old.get(i))));
		}
		List<Element> after = new ArrayList<>();
		for (Record element : now) {
			if (same.getOrDefault(element, 0) > 0) {
				same.merge(element, -1, Integer::sum);
			} else {
				after.add(new Element(element, name(element), name(element), span(element)));
			}
		}
		pair(kind, before, after, element -> element.span().file() + " " + element.words());
		pair(kind, before, after, Element::words);
		pair(kind, before, after, element -> element.called() + " " + element.meaning());
		if (KNOWN_BY_MEANING.contains(kind)) {
			pair(kind, before, after, Element::meaning);
		}
		pair(kind, before, after, Element::called);
		before.forEach(element -> edits.add(new Edit(kind, Optional.of(element.name()), Optional.empty(), element.span(), Span.NONE, List.of(), whole(kind))));
		after.forEach(element -> edits.add(new Edit(kind, Optional.empty(), Optional.of(element.name()), Span.NONE, element.span(), List.of(), whole(kind))));
	}

	private static List<Law> ownLaws(RuleBase base) {
		Set<Law> ofChains = base.chains().stream().flatMap(chain -> chain.laws().stream()).collect(Collectors.toSet());
		return base.laws().stream().filter(law -> !ofChains.contains(law)).toList();
	}

	private static Edit.Weight whole(String kind) {
		return BESIDE.contains(kind) ? Edit.Weight.WORDS : Set.of("tool", "hazard", "repair", "workshop", "state").contains(kind) ? Edit.Weight.WORK : Edit.Weight.MEANING;
	}

	/** Takes out of both lists what belongs together. */
	private void pair(String kind, List<Element> before, List<Element> after, Function<Element, String> key) {
		if (before.isEmpty() || after.isEmpty()) {
			return;
		}
		Map<String, Deque<Element>> open = new HashMap<>();
		before.forEach(element -> open.computeIfAbsent(key.apply(element), one -> new ArrayDeque<>()).add(element));
		Set<Element> taken = Collections.newSetFromMap(new IdentityHashMap<>());
		List<Element> left = new ArrayList<>();
		for (Element now : after) {
			Element was = open.getOrDefault(key.apply(now), new ArrayDeque<>()).poll();
			if (was == null) {
				left.add(now);
			} else {
				taken.add(was);
				edit(kind, was, now);
			}
		}
		before.removeIf(taken::contains);
		after.clear();
		after.addAll(left);
	}

	private void edit(String kind, Element was, Element now) {
		Map<String, String> before = Contents.of(was.says(), true);
		Map<String, String> after = Contents.of(now.says(), true);
		List<String> parts = after.keySet().stream().filter(part -> !after.get(part).equals(before.get(part))).toList();
		Map<String, String> did = Contents.of(was.says(), false);
		Map<String, String> does = Contents.of(now.says(), false);
		Edit.Weight weight = parts.isEmpty() ? Edit.Weight.NONE : Edit.Weight.WORDS;
		for (String part : BESIDE.contains(kind) ? List.<String>of() : parts) {
			if (does.containsKey(part) && !does.get(part).equals(did.get(part))) {
				weight = DECIDES.contains(part) || weight == Edit.Weight.MEANING ? Edit.Weight.MEANING : Edit.Weight.WORK;
			}
		}
		Edit edit = new Edit(kind, Optional.of(was.name()), Optional.of(now.name()), was.span(), now.span(), parts, weight);
		if (weight != Edit.Weight.NONE || edit.isRenamed() || edit.isMoved()) {
			edits.add(edit);
		}
	}

	private static String name(Record element) {
		if (element instanceof Review review) {
			return review.rule() + ", " + review.reviewer() + ", " + review.date();
		} else if (element instanceof Acceptance acceptance) {
			return acceptance.flawId();
		}
		if (element instanceof Remark remark) {
			return remark.rule().orElse(remark.change()) + ", " + remark.author() + ", " + remark.date();
		} else if (element instanceof SignOff) {
			return "sign_off";
		} else if (element instanceof Reviewer reviewer) {
			return reviewer.name();
		}
		return element instanceof Named named ? named.name() : element instanceof Law law ? law.title()
				: element instanceof Exclusive exclusive ? String.join(", ", exclusive.faults()) : ((Workshop) element).title();
	}

	private static Span span(Record element) {
		for (RecordComponent part : element.getClass().getRecordComponents()) {
			if (part.getName().equals("span")) {
				return (Span) Parts.value(element, part);
			}
		}
		return Span.NONE;
	}
}
