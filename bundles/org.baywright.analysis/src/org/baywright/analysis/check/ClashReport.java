package org.baywright.analysis.check;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.baywright.analysis.Fix;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.model.Conclusion;
import org.baywright.model.Exclusive;
import org.baywright.model.Fault;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;

/** Tells of pairs of rules, each once, with the smallest situation that shows it in any family. */
final class ClashReport {

	private ClashReport() {
	}

	/**
	 * What two outcomes disagree about, told once.
	 *
	 * @param clash one of the clashes, with the situation that shows them all
	 * @param part the part that shows it
	 * @param first what the first outcome says something about, sorted
	 * @param second what the second says something about, sorted
	 * @param others those of these that other outcomes of the two rules disagree about as well
	 */
	record Told(Pairs.Clash clash, Component part, TreeSet<String> first, TreeSet<String> second, TreeSet<String> others) {

		Told(Pairs.Clash clash, Component part) {
			this(clash, part, new TreeSet<>(), new TreeSet<>(), new TreeSet<>());
		}

		void note(Pairs.Clash more) {
			if (more.more()) {
				others.add(more.subject());
			}
		}

		/** Returns all faults, or whom the job is referred to. */
		TreeSet<String> subjects() {
			TreeSet<String> all = new TreeSet<>(first);
			all.addAll(second);
			return all;
		}

		/** Returns the first rule, as the subject of a sentence. */
		String firstRule() {
			return clash.first() + behind(clash.behindFirst());
		}

		/** Returns the second rule, as the subject of a sentence. */
		String secondRule() {
			return clash.second() + behind(clash.behindSecond());
		}

		private static String behind(List<Pairs.Step> chain) {
			List<String> rules = chain.stream().map(Pairs.Step::rule).distinct().toList();
			return rules.isEmpty() ? "" : ", which builds on " + (rules.size() == 1 ? "rule " : "rules ") + Words.and(rules) + ",";
		}

		String it() {
			return subjects().size() == 1 ? "it" : "them";
		}
	}

	/** Tells of rules that say two things that do not fit about one subject. */
	static void report(Checked checked, ProofCheck<List<Pairs.Clash>> check, Function<Told, String> sentence) {
		report(checked, check, sentence, told -> Optional.empty());
	}

	/** @param own a fix of the check's own, beside those that take back what one of the rules says */
	static void report(Checked checked, ProofCheck<List<Pairs.Clash>> check, Function<Told, String> sentence, Function<Told, Optional<Fix>> own) {
		Map<String, Told> byOutcomes = new LinkedHashMap<>();
		each(checked, check, (pair, part, clash) -> {
			Told told = byOutcomes.computeIfAbsent(clash.outcomes(), key -> new Told(clash, part));
			told.first().add(clash.subject());
			told.second().add(clash.subject());
			told.note(clash);
		});
		byOutcomes.values().forEach(told -> report(checked, check, told, sentence.apply(told), own.apply(told)));
	}

	/** Tells of rules that confirm one fault each of which only one can be the cause. */
	static void reportExclusive(Checked checked, ProofCheck<List<Pairs.Clash>> check, Function<Told, String> sentence) {
		Map<String, Told> byOutcomes = new LinkedHashMap<>();
		List<Exclusive> groups = checked.base().exclusives();
		each(checked, check, (pair, part, clash) -> {
			List<String> faults = List.of(clash.subject().split("\\+"));
			int group = IntStream.range(0, groups.size()).filter(i -> groups.get(i).faults().containsAll(faults)).findFirst()
					.orElseThrow();
			String turned = clash.turned() + "/" + group;
			boolean inOrder = !byOutcomes.containsKey(turned);
			Told told = byOutcomes.computeIfAbsent(inOrder ? clash.outcomes() + "/" + group : turned, key -> new Told(clash, part));
			told.first().add(faults.get(inOrder ? 0 : 1));
			told.second().add(faults.get(inOrder ? 1 : 0));
			told.note(clash);
		});
		byOutcomes.values().forEach(told -> report(checked, check, told, sentence.apply(told), Optional.empty()));
	}

	private static void each(Checked checked, ProofCheck<List<Pairs.Clash>> check, Smallest.Use<Pairs.Clash> use) {
		Smallest<Pairs.Clash> smallest = new Smallest<>();
		Map<String, Set<String>> outcomes = new HashMap<>();
		HeldBack heldBack = HeldBack.in(checked);
		checked.each(check, (part, clashes) -> clashes.stream().filter(clash -> !heldBack.mayForbid(clash.situation())).forEach(clash -> {
			smallest.add(clash.pair(), part, clash, clash.situation());
			outcomes.computeIfAbsent(clash.pair(), pair -> new HashSet<>()).add(clash.eitherWay());
		}));
		smallest.each((pair, part, clash) -> use.accept(pair, part, outcomes.get(pair).size() > 1 ? clash.withMore() : clash));
	}

	private static void report(Checked checked, Check check, Told told, String sentence, Optional<Fix> own) {
		Pairs.Clash clash = told.clash();
		Rule first = checked.base().rule(clash.first()).orElseThrow();
		Rule second = checked.base().rule(clash.second()).orElseThrow();
		Checked.Draftsman flaw = checked
				.flaw(check, String.join("+", told.subjects()) + "/" + clash.first() + "/" + clash.second(),
						first.outcomes().get(clash.firstOutcome()).span())
				.says(sentence + (!told.others().isEmpty() ? " The same goes for other results of these two rules." : "")).shownBy(checked.witness(told.part(), clash.situation()))
				.near(List.of(checked.place(clash.second(), clash.secondOutcome()))).about(first).about(second);
		Stream.concat(clash.behindFirst().stream(), clash.behindSecond().stream()).distinct()
				.forEach(step -> flaw.near(List.of(checked.place(step.rule(), step.outcome()))));
		withdraw(checked, second, clash.secondOutcome(), told.subjects(), flaw);
		withdraw(checked, first, clash.firstOutcome(), told.subjects(), flaw);
		own.ifPresent(flaw::fix);
		flaw.add();
	}

	/** Either rule may prove too much; but what nothing else confirms stays, or the fault could never be found. */
	private static void withdraw(Checked checked, Rule rule, int outcome, Set<String> faults, Checked.Draftsman flaw) {
		for (Conclusion conclusion : rule.outcomes().get(outcome).conclusions()) {
			if (conclusion instanceof Conclusion.OnFault on && faults.contains(on.fault())
					&& (on.verdict() != VerdictKind.CONFIRMED || isConfirmedElsewhere(checked, on))) {
				String title = "Withdraw: " + rule.name() + " " + on.verdict().verb() + " " + on.fault();
				flaw.fix(new Fix.Withdraw(title, rule.name(), on.fault(), on.span()));
			}
		}
	}

	private static boolean isConfirmedElsewhere(Checked checked, Conclusion.OnFault here) {
		return checked.base().rules().stream().flatMap(rule -> rule.outcomes().stream())
				.flatMap(outcome -> outcome.conclusions().stream())
				.anyMatch(said -> said instanceof Conclusion.OnFault on && on.verdict() == VerdictKind.CONFIRMED
						&& on.fault().equals(here.fault()) && !on.span().equals(here.span()));
	}

	/** Returns the fault as people say it, with its name. */
	static String say(Checked checked, String fault) {
		return checked.base().fault(fault).map(Fault::title).filter(title -> !title.equals(fault))
				.map(title -> fault + " (" + title + ")").orElse(fault);
	}

	/** Returns several faults as {@link #say(Checked, String)} says each. */
	static String say(Checked checked, Collection<String> faults) {
		return Words.and(faults.stream().map(fault -> say(checked, fault)).toList());
	}
}
