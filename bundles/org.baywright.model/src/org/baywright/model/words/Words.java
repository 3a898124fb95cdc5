package org.baywright.model.words;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Module;
import org.baywright.model.Outcome;
import org.baywright.model.Part;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.State;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.Tool;
import org.baywright.model.Trait;
import org.baywright.model.ValueSet;

/** Says what rules say, as a technician would. */
public final class Words {

	private final RuleBase base;

	public Words(RuleBase base) {
		this.base = base;
	}

	/** Returns "a", "a and b", "a, b and c"; the empty text for none. */
	public static String and(Collection<String> several) {
		List<String> parts = List.copyOf(several);
		int last = parts.size() - 1;
		return last < 1 ? String.join("", parts) : String.join(", ", parts.subList(0, last)) + " and " + parts.get(last);
	}

	public String family(String name) {
		return base.family(name).map(Family::title).orElse(name);
	}

	public String sign(String name) {
		return base.sign(name).map(Sign::title).orElse(name);
	}

	public String module(String name) {
		return base.module(name).map(Module::title).orElse(name);
	}

	public String test(String name) {
		return base.test(name).map(Test::title).orElse(name);
	}

	public String tool(String name) {
		return base.tool(name).map(Tool::title).orElse(name);
	}

	public String hazard(String name) {
		return base.hazard(name).map(Hazard::title).orElse(name);
	}

	/** Returns what a test, a code, a module or a sign is called. */
	public String finding(String name) {
		return base.test(name).isPresent() ? test(name)
				: base.code(name).isPresent() ? "code " + code(name) : base.module(name).isPresent() ? module(name) : sign(name);
	}

	/** Returns the part and the fault: "12 V battery: one cell open". */
	public String fault(String name) {
		Optional<Fault> fault = base.fault(name);
		return fault.flatMap(found -> base.part(found.part())).map(Part::title).map(part -> part + ": ").orElse("")
				+ fault.map(Fault::title).orElse(name);
	}

	/** Returns the code as people write it with what it stands for: "U3003-16 (Low supply)". */
	public String code(String name) {
		return base.code(name).map(code -> code.text().display()
				+ (code.title().equals(code.text().display()) ? "" : " (" + code.title() + ")")).orElse(name);
	}

	private String moduleOf(String code) {
		return base.code(code).map(Code::module).map(this::module).orElse("its module");
	}

	/** Returns the results that lead to an outcome: "below 12.4 V"; the empty text for a rule without a test. */
	public String result(Rule rule, Outcome outcome) {
		return rule.test().flatMap(base::test)
				.flatMap(test -> outcome.values().map(values -> Limits.say(values, test.domain()))).orElse("");
	}

	public String setting(StateSetting setting) {
		Optional<State> state = base.state(setting.state());
		String value = state.map(found -> new Domain.Names(found.values())).filter(names -> names.indexOf(setting.value()) >= 0)
				.map(names -> names.say(names.indexOf(setting.value()))).orElse(setting.value());
		return state.map(State::title).orElse(setting.state()) + " " + value;
	}

	/** Returns states of which any will do: "Ignition on or Ignition running". */
	public String anySetting(List<StateSetting> settings) {
		return settings.stream().map(this::setting).collect(Collectors.joining(" or "));
	}

	public String settings(List<StateSetting> settings) {
		return settings.stream().map(this::setting).collect(Collectors.joining(", "));
	}

	public String scope(Scope scope) {
		String families = scope.families().isEmpty() ? "every family"
				: scope.families().stream().map(this::family).collect(Collectors.joining(", "));
		String except = scope.except().isEmpty() ? ""
				: " except " + scope.except().stream().map(this::family).collect(Collectors.joining(", "));
		return families + except + scope.where().map(where -> " with " + condition(where)).orElse("");
	}

	/** Returns the condition in words. */
	public String condition(Condition condition) {
		return condition.match(
				(Condition.And and) -> and.parts().isEmpty() ? "in every case" : joined(and.parts(), " and "),
				(Condition.Or or) -> or.parts().isEmpty() ? "in no case" : joined(or.parts(), " or "),
				(Condition.Not not) -> not.part() instanceof Condition.SignIs is ? sign(is.sign(), !is.present())
						: "known not to hold: " + nested(not.part()),
				this::atom);
	}

	private String atom(Condition.Atom atom) {
		return atom.match(
				(Condition.TraitIs is) -> is.trait() + " " + trait(is.trait(), is.values()),
				(Condition.SignIs is) -> sign(is.sign(), is.present()),
				(Condition.TestIs is) -> test(is.test()) + ": "
						+ base.test(is.test()).map(test -> Limits.say(is.values(), test.domain())).orElse("?"),
				(Condition.CodeIs is) -> "code " + code(is.code()) + " " + reading(is.reading(), moduleOf(is.code())),
				(Condition.ModuleIs is) -> module(is.module()) + (is.answers() ? " answers" : " is silent"),
				(Condition.VerdictIs is) -> "“" + fault(is.fault()) + "” is " + (is.stands() ? "" : "not ") + is.verdict().word(),
				(Condition.Unexplained is) -> "“" + sign(is.sign()) + "” and nothing that explains it is confirmed");
	}

	private String nested(Condition part) {
		boolean bare = part.match(
				(Condition.And and) -> and.parts().size() > 1,
				(Condition.Or or) -> or.parts().size() > 1,
				(Condition.Not not) -> false,
				(Condition.Atom atom) -> false);
		return bare ? "(" + condition(part) + ")" : condition(part);
	}

	private String joined(List<Condition> parts, String word) {
		return parts.stream().map(part -> parts.size() > 1 ? nested(part) : condition(part))
				.collect(Collectors.joining(word));
	}

	private String sign(String name, boolean present) {
		return "“" + sign(name) + "”" + (present ? "" : " is not seen");
	}

	private static String reading(CodeReading reading, String module) {
		return switch (reading) {
		case PRESENT -> "is present in " + module;
		case ABSENT -> "is absent in " + module + ", which answers";
		case UNREAD -> "is unread, since " + module + " is silent";
		case ACTIVE -> "is active in " + module + ": it finds the fault right now";
		case STORED -> "is stored in " + module + ", which does not find the fault right now";
		case PENDING -> "is pending in " + module + ": found once, not yet confirmed";
		case UNTESTED -> "is untested in " + module + " since its codes were cleared";
		case MISSING -> "is not seen: " + module + " does not hold it, or is silent";
		};
	}

	/** A trait may have other values in other families, so its values are said without its domain. */
	private String trait(String name, ValueSet values) {
		if (values instanceof ValueSet.Except except) {
			return "other than " + trait(name, except.part());
		} else if (values instanceof ValueSet.Union union) {
			return union.parts().stream().map(part -> trait(name, part)).collect(Collectors.joining(" or "));
		} else if (values instanceof ValueSet.Choices choices) {
			return choices.names().stream().map(choice -> traitValue(name, choice)).collect(Collectors.joining(" or "));
		}
		return Limits.say((ValueSet.Band) values);
	}

	private String traitValue(String trait, String value) {
		for (Family family : base.families()) {
			Trait found = base.traitsOf(family.name()).get(trait);
			if (found != null && found.domain() instanceof Domain.Names names && names.indexOf(value) >= 0) {
				return names.say(names.indexOf(value));
			}
		}
		return value;
	}

	/** Returns what a conclusion says in words. */
	public String conclusion(Conclusion conclusion) {
		if (conclusion instanceof Conclusion.OnFault on) {
			return on.verdict().verb() + " “" + fault(on.fault()) + "”";
		} else if (conclusion instanceof Conclusion.Refers refers) {
			return "refers to " + refers.toWhom();
		}
		return "proves nothing by itself";
	}

	/** Returns what was found in words. */
	public String reading(String family, Reading reading) {
		if (reading instanceof Reading.SignSeen seen) {
			return sign(seen.subject(), seen.present());
		} else if (reading instanceof Reading.CodeRead read) {
			return "code " + code(read.subject()) + " " + reading(read.reading(), moduleOf(read.subject()));
		} else if (reading instanceof Reading.ModuleAsked asked) {
			return module(asked.subject()) + (asked.answers() ? " answers" : " is silent");
		}
		Optional<Domain> domain = base.test(reading.subject()).map(Test::domain);
		Trait trait = base.traitsOf(family).get(reading.subject());
		if (domain.isEmpty() && trait != null) {
			domain = Optional.of(trait.domain());
		}
		String subject = base.test(reading.subject()).map(test -> test.title() + ":").orElse(reading.subject());
		if (reading instanceof Reading.Measured measured) {
			return subject + " " + domain.filter(Domain.Quantity.class::isInstance).map(Domain.Quantity.class::cast)
					.map(quantity -> quantity.sayNumber(measured.value())).orElse(measured.value().toPlainString());
		}
		String value = ((Reading.Named) reading).value();
		return subject + " " + domain.filter(found -> found.indexOf(value) >= 0).map(found -> found.say(found.indexOf(value))).orElse(value);
	}

	/** Returns every part in words, joined by commas; the empty text for none. */
	public static String commas(List<String> parts) {
		return String.join(", ", new ArrayList<>(parts));
	}
}
