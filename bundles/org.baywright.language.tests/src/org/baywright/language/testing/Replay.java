package org.baywright.language.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.RuleBase;
import org.baywright.model.Trait;
import org.baywright.model.VerdictKind;

/**
 * Does what a flaw tells: writes its situation down as a finished job, adds the job to the text and looks what the
 * rules make of it.
 */
public final class Replay {

	private Replay() {
	}

	/** Returns the situation that shows a flaw. */
	public static Situation situation(Flaw flaw) {
		if (flaw.evidence() instanceof Evidence.Region region) {
			return region.situation();
		}
		return ((Evidence.Witness) flaw.evidence()).situation();
	}

	/** Returns what the rules make of a situation. */
	public static CaseResult of(MarkedFlaws rules, Situation situation) {
		return all(rules, List.of(situation)).get(0);
	}

	/** Returns what the rules make of each of the situations. */
	public static List<CaseResult> all(MarkedFlaws rules, List<Situation> situations) {
		StringBuilder text = new StringBuilder(rules.text());
		for (int i = 0; i < situations.size(); i++) {
			text.append("\n").append(job(rules.base(), "replay " + i, situations.get(i)));
		}
		MarkedFlaws replayed = MarkedFlaws.of(text.toString());
		assertEquals(List.of(), replayed.problems(), text::toString);
		return replayed.report().cases().stream().filter(result -> result.job().name().startsWith("replay ")).toList();
	}

	/**
	 * Asserts that a flaw's witness shows what the flaw says, and that it is as small as can be: without any one of
	 * its findings it shows that no more.
	 */
	public static CaseResult assertShows(MarkedFlaws rules, Flaw flaw, Predicate<CaseResult> shows) {
		Situation whole = situation(flaw);
		List<Situation> situations = new ArrayList<>(List.of(whole));
		situations.addAll(smaller(rules.base(), whole));
		List<CaseResult> results = all(rules, situations);
		assertTrue(shows.test(results.get(0)), () -> whole + " shows nothing: " + results.get(0));
		assertFalse(results.get(0).message().contains("the laws"), () -> whole + " is against a law");
		for (int i = 1; i < results.size(); i++) {
			CaseResult result = results.get(i);
			assertFalse(shows.test(result), () -> "a smaller situation shows the same: " + result);
		}
		return results.get(0);
	}

	/**
	 * Returns the situations that lack one finding. A code that was read shows that its module answers, and a silent
	 * module shows that its codes are unread; these come and go together.
	 */
	private static List<Situation> smaller(RuleBase base, Situation whole) {
		List<Situation> smaller = new ArrayList<>();
		for (Situation.Fact fact : whole.facts()) {
			if (fact.variable().kind() != Variable.Kind.TRAIT) {
				smaller.add(new Situation(whole.family(), whole.facts().stream()
						.filter(other -> other != fact && !isOf(base, other, fact) && !isOf(base, fact, other)).toList()));
			}
		}
		return smaller;
	}

	private static boolean isOf(RuleBase base, Situation.Fact code, Situation.Fact module) {
		return code.variable().kind() == Variable.Kind.CODE && module.variable().kind() == Variable.Kind.MODULE
				&& base.code(code.variable().name()).map(Code::module).filter(module.variable().name()::equals).isPresent();
	}

	/** Returns whether the rules derive a verdict in a situation. */
	public static boolean says(CaseResult result, VerdictKind kind, String fault) {
		return result.verdicts().contains(new Verdict(fault, kind));
	}

	/** Returns whether the rules refer to somebody in a situation. */
	public static boolean refers(CaseResult result, String toWhom) {
		return result.verdicts().contains(Verdict.referral(toWhom));
	}

	/** Returns whether the rules confirm nothing and refer to nobody. */
	public static boolean isOpenEnd(CaseResult result) {
		return result.verdicts().stream().noneMatch(Verdict::isEnd);
	}

	private static String job(RuleBase base, String name, Situation situation) {
		Map<Variable, Integer> values = situation.example();
		Map<String, String> traits = new TreeMap<>();
		List<String> found = new ArrayList<>();
		for (Trait trait : base.traitsOf(situation.family()).values()) {
			int value = values.getOrDefault(new Variable(Variable.Kind.TRAIT, trait.name()), 0);
			traits.put(trait.name(), trait.name() + " " + say(trait.domain(), value));
		}
		values.forEach((variable, value) -> {
			switch (variable.kind()) {
			case SIGN -> found.add(variable.name() + (value == Variable.PRESENT ? " present" : " absent"));
			case MODULE -> found.add(variable.name() + (value == Variable.ANSWERS ? " answers" : " silent"));
			case CODE -> found.add(variable.name() + " " + CodeReading.values()[value].name().toLowerCase(Locale.ROOT));
			case TEST -> found.add(variable.name() + " is " + say(base.test(variable.name()).orElseThrow().domain(), value));
			default -> {
			}
			}
		});
		return "job \"" + name + "\" { on " + situation.family()
				+ (traits.isEmpty() ? "" : " with " + String.join(", ", traits.values()))
				+ (found.isEmpty() ? "" : " found " + found.stream().collect(Collectors.joining(", "))) + " was referred }";
	}

	private static String say(Domain domain, int value) {
		return domain instanceof Domain.Names names ? names.values().get(value).name() : domain.say(value);
	}
}
