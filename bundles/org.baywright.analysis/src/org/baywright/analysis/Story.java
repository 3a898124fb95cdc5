package org.baywright.analysis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.IndexSet;
import org.baywright.model.Module;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.baywright.model.Test;
import org.baywright.model.Trait;

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
		String family = base.family(situation.family()).map(Family::title).orElse(situation.family());
		return traits.isEmpty() ? family : family + " with " + String.join(", ", traits);
	}

	/** Returns one known thing as a technician says it. */
	public static String say(RuleBase base, String family, Situation.Fact fact, boolean allValues) {
		String name = fact.variable().name();
		boolean first = fact.values().contains(Variable.PRESENT);
		switch (fact.variable().kind()) {
		case SIGN:
			String sign = base.sign(name).map(Sign::title).orElse(name);
			return first ? sign : "\"" + sign + "\" is not seen";
		case MODULE:
			String module = base.module(name).map(Module::title).orElse(name);
			return module + (first ? " answers" : " is silent");
		case CODE:
			return code(base, name, fact);
		case TEST:
			Optional<Test> test = base.test(name);
			return test.map(Test::title).orElse(name) + ": "
					+ test.map(found -> values(found.domain(), fact, allValues)).orElse("?");
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
		return allValues ? say(domain, fact.values()) : domain.say(fact.example());
	}

	/** Returns a set of values as a technician says it: "below 9.6 V", "12.0 V or more", "lit or dim". */
	public static String say(Domain domain, IndexSet values) {
		List<String> parts = new ArrayList<>();
		int last = domain.size() - 1;
		for (int run = 0; run < values.runCount(); run++) {
			int low = values.low(run);
			int high = values.high(run);
			if (domain instanceof Domain.Names) {
				for (int i = low; i <= high; i++) {
					parts.add(domain.say(i));
				}
			} else if (low == 0 && high == last) {
				parts.add("any value");
			} else if (low == high) {
				parts.add(domain.say(low));
			} else if (low == 0) {
				parts.add(domain.say(high) + " or less");
			} else if (high == last) {
				parts.add(domain.say(low) + " or more");
			} else {
				parts.add(domain.say(low) + " to " + domain.say(high));
			}
		}
		return parts.stream().collect(Collectors.joining(" or "));
	}
}
