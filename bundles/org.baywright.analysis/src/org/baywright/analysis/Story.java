package org.baywright.analysis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Module;
import org.baywright.model.RuleBase;
import org.baywright.model.Trait;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Words;

/** Tells evidence as a technician would. */
public final class Story {

	private Story() {
	}

	/** Returns the evidence in short sentences; none for evidence that the text itself shows. */
	public static List<String> tell(RuleBase base, Evidence evidence) {
		if (evidence instanceof Evidence.Witness witness) {
			return situation(base, witness.situation(), false);
		} else if (evidence instanceof Evidence.Region region) {
			return situation(base, region.situation(), true);
		} else if (evidence instanceof Evidence.Core core) {
			return core.lines().stream().map(place -> "line " + place.span().line() + " of " + place.span().file() + " ("
					+ place.note() + ")").toList();
		} else if (evidence instanceof Evidence.Undecided undecided) {
			return List.of("It was not decided " + undecided.question() + ".");
		}
		return List.of();
	}

	private static List<String> situation(RuleBase base, Situation situation, boolean whenever) {
		List<String> told = new ArrayList<>();
		told.add(vehicle(base, situation));
		Set<String> answering = new HashSet<>();
		for (Situation.Fact fact : situation.facts()) {
			if (fact.variable().kind() == Variable.Kind.CODE && !fact.values().contains(Variable.UNREAD)) {
				base.code(fact.variable().name()).map(Code::module).ifPresent(answering::add);
			}
		}
		for (Situation.Fact fact : situation.facts()) {
			boolean obvious = fact.variable().kind() == Variable.Kind.MODULE
					&& answering.contains(fact.variable().name());
			if (fact.variable().kind() != Variable.Kind.TRAIT && !obvious) {
				told.add(say(base, situation.family(), fact, whenever));
			}
		}
		return told;
	}

	private static String vehicle(RuleBase base, Situation situation) {
		List<String> traits = new ArrayList<>();
		for (Situation.Fact fact : situation.facts()) {
			if (fact.variable().kind() == Variable.Kind.TRAIT) {
				Trait trait = base.traitsOf(situation.family()).get(fact.variable().name());
				if (trait != null && !fact.values().equals(IndexSet.all(trait.domain()))) {
					traits.add(fact.variable().name() + " " + values(trait.domain(), fact, true));
				}
			}
		}
		String family = new Words(base).family(situation.family());
		return traits.isEmpty() ? family : family + " with " + String.join(", ", traits);
	}

	/** Returns one known thing as a technician says it. */
	public static String say(RuleBase base, String family, Situation.Fact fact, boolean allValues) {
		Words words = new Words(base);
		String name = fact.variable().name();
		boolean first = fact.values().contains(Variable.PRESENT);
		switch (fact.variable().kind()) {
		case SIGN:
			String sign = words.sign(name);
			return first ? sign : "\"" + sign + "\" is not seen";
		case MODULE:
			return words.module(name) + (first ? " answers" : " is silent");
		case CODE:
			return code(base, name, fact);
		case TEST:
			return words.test(name) + ": " + base.test(name).map(found -> values(found.domain(), fact, allValues)).orElse("?");
		default:
			Trait trait = base.traitsOf(family).get(name);
			return name + " " + (trait == null ? "?" : values(trait.domain(), fact, allValues));
		}
	}

	private static String code(RuleBase base, String name, Situation.Fact fact) {
		String text = base.code(name).map(code -> code.title().equals(code.name()) ? code.name()
				: code.name() + " (" + code.title() + ")").orElse(name);
		String module = base.code(name).flatMap(code -> base.module(code.module())).map(Module::title).orElse("module");
		List<String> readings = new ArrayList<>();
		boolean anyState = CodeReading.OF_PRESENT.stream().allMatch(state -> fact.values().contains(state.ordinal()));
		for (CodeReading reading : CodeReading.values()) {
			if (fact.values().contains(reading.ordinal()) && !(anyState && CodeReading.OF_PRESENT.contains(reading))
					|| anyState && reading == CodeReading.PRESENT) {
				readings.add(reading.name().toLowerCase(Locale.ROOT));
			}
		}
		return "code " + text + " " + String.join(" or ", readings) + " in " + module;
	}

	private static String values(Domain domain, Situation.Fact fact, boolean allValues) {
		return allValues ? Limits.say(fact.values(), domain) : domain.say(fact.example());
	}
}
