package org.baywright.language.ide.hover;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.baywright.language.ide.names.Target;
import org.baywright.model.Agreement;
import org.baywright.model.Chain;
import org.baywright.model.Code;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Picture;
import org.baywright.model.Repair;
import org.baywright.model.Review;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.Trait;
import org.baywright.model.VerdictKind;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;

/** Explains the things of a rule base in Markdown: one paragraph for each line of what is known. */
final class Explaining {

	private static final int SHOWN = 6;

	private final RuleBase base;
	private final RuleUses uses;
	private final List<String> lines = new ArrayList<>();

	Explaining(RuleBase base, RuleUses uses) {
		this.base = base;
		this.uses = uses;
	}

	/** Returns what is known of a thing beside its kind and name; nothing if the rule base lacks it. */
	List<String> of(Target target) {
		if (target.value().isPresent()) {
			value(target.name(), target.value().get());
			return lines;
		}
		String name = target.name();
		switch (target.kind()) {
		case FAMILY -> base.family(name).ifPresent(family -> {
			title(family.title(), name);
			family.parent().ifPresent(parent -> add("Like", parent));
			add("Has", family.systems());
			if (family.kind() == Family.Kind.SYSTEM) {
				add("Fitted in", base.descendants(name).stream().filter(other -> !other.equals(name)).toList());
			}
			family.cycles().forEach(cycle -> base.state(cycle.state()).ifPresent(state -> add("Cycle of " + state.name(),
					Telling.cycle(cycle, new Domain.Names(state.values())))));
			add("Traits", base.traitsOf(name).keySet());
		});
		case STATE -> base.state(name).ifPresent(state -> {
			title(state.title(), name);
			add("Values", say(state.values()));
			add("Takes", state.values().stream().map(NamedValue::name).filter(value -> state.minutesTo(value).isPresent())
					.map(value -> value + " " + Telling.duration(state.minutesTo(value).get())).toList());
		});
		case TOOL -> base.tool(name).ifPresent(tool -> {
			title(tool.title(), name);
			if (tool.cost().signum() > 0) {
				add("Costs", Meaning.number(tool.cost()));
			}
		});
		case HAZARD -> base.hazard(name).ifPresent(this::hazard);
		case MODULE -> base.module(name).ifPresent(this::module);
		case CODE -> base.code(name).ifPresent(this::code);
		case SIGN -> base.sign(name).ifPresent(sign -> {
			title(sign.title(), name);
			if (sign.intermittent()) {
				lines.add("Comes and goes: that it is absent on the day proves nothing.");
			}
			add("For", sign.scope().isEvery() ? List.of() : List.of(new Words(base).scope(sign.scope())));
			sign.precautions().forEach(precaution -> lines.add(Telling.precaution(precaution)));
			add("Asked for by", uses.rules(name));
		});
		case PART -> base.part(name).ifPresent(part -> {
			title(part.title(), name);
			part.place().ifPresent(place -> add("Where", place));
			pictures(part.pictures());
			add("Faults", part.faults().stream().map(Fault::title).toList());
			add("Hazards", part.hazards());
		});
		case FAULT -> base.fault(name).ifPresent(this::fault);
		case TEST -> base.test(name).ifPresent(this::test);
		case TRAIT -> trait(name);
		case RULE -> {
			base.rule(name).ifPresent(this::rule);
			base.chain(name).ifPresent(this::chain);
		}
		case REPAIR -> base.repair(name).ifPresent(this::repair);
		}
		return lines;
	}

	private void value(String owner, String value) {
		List<NamedValue> values = new ArrayList<>();
		base.state(owner).ifPresent(state -> values.addAll(state.values()));
		base.test(owner).ifPresent(test -> values.addAll(test.domain().named()));
		base.families().stream().flatMap(family -> family.traits().stream()).filter(trait -> trait.name().equals(owner))
				.forEach(trait -> values.addAll(trait.domain().named()));
		values.stream().filter(found -> found.name().equals(value)).findFirst()
				.ifPresent(found -> title(found.title(), value));
		lines.add("Value of `" + owner + "`");
		base.state(owner).flatMap(state -> state.minutesTo(value)).ifPresent(minutes -> add("Takes", Telling.duration(minutes)));
	}

	private void hazard(Hazard hazard) {
		title(hazard.title(), hazard.name());
		lines.addAll(hazard.cautions());
		lines.addAll(hazard.licensed());
		add("Reference", hazard.references());
	}

	private void module(Module module) {
		title(module.title(), module.name());
		add("Fitted in", module.families());
		add("Must answer in", module.answersIn().isEmpty() ? List.of() : List.of(new Words(base).anySetting(module.answersIn())));
		known(new Telling(base).asking(module));
		add("Codes", base.codes().stream().filter(code -> code.module().equals(module.name())).map(Code::name).toList());
	}

	private void code(Code code) {
		title(code.title(), code.name());
		String form = "maker's own form";
		if (code.text() instanceof Dtc dtc) {
			String system = switch (dtc.code().charAt(0)) {
			case 'P' -> "powertrain";
			case 'C' -> "chassis";
			case 'B' -> "body";
			default -> "network";
			};
			form = "SAE J2012 / ISO 15031-6: " + system + (dtc.sub().isEmpty() ? "" : ", failure type " + dtc.sub());
		} else if (code.text() instanceof J1939Code) {
			form = "SAE J1939-73: suspect parameter number, failure mode identifier";
		}
		lines.add("`" + code.text().display() + "` (" + form + ")");
		lines.add("Kept by `" + code.module() + "`"
				+ base.module(code.module()).map(module -> ", " + module.title()).orElse(""));
		String runs = new Telling(base).runs(code);
		if (!runs.isEmpty()) {
			add("Tested by the module", runs);
		}
		add("Asked for by", uses.rules(code.name()));
	}

	private void fault(Fault fault) {
		title(fault.title(), fault.name());
		lines.add("Fault of " + base.part(fault.part()).map(part -> part.title()).orElse(fault.part())
				+ (fault.seen() > 0 ? ", the cause in " + fault.seen() + (fault.seen() == 1 ? " job" : " jobs") : ""));
		for (VerdictKind verdict : VerdictKind.values()) {
			String verb = verdict.verb();
			add(Character.toUpperCase(verb.charAt(0)) + verb.substring(1) + " it", uses.rules(verdict, fault.name()));
		}
		add("Repairs", uses.repairs(fault.name()));
	}

	private void test(Test test) {
		title(test.title(), test.name());
		known(new Telling(base).of(test));
		pictures(test.pictures());
		add("Caution", List.copyOf(test.cautions(base)));
		add("Used by", uses.rules(test.name()));
	}

	private void trait(String name) {
		base.families().forEach(family -> family.traits().stream().filter(trait -> trait.name().equals(name))
				.forEach(trait -> lines.add("In `" + family.name() + "`: " + say(trait))));
	}

	private static String say(Trait trait) {
		if (trait.domain() instanceof Domain.Quantity quantity) {
			return (trait.word().isEmpty() ? "" : trait.word() + " ") + quantity.sayNumber(quantity.low()) + " .. "
					+ quantity.sayNumber(quantity.high());
		}
		return say(trait.domain().named());
	}

	private void chain(Chain chain) {
		title(chain.title(), chain.name());
		lines.add("A chain of check points: the first that is wrong names the fault.");
		for (Chain.Point point : chain.points()) {
			lines.add(point.title() + base.test(point.test()).map(test -> ": " + Limits.say(point.good(), test.domain())).orElse("")
					+ (point.faults().isEmpty() ? "" : "; else " + String.join(" or ", point.faults())));
		}
		add("Beyond", chain.beyond());
		chain.provenance().because().ifPresent(lines::add);
		agreement(chain.name());
	}

	private void rule(Rule rule) {
		title(rule.title(), rule.name());
		rule.test().ifPresent(test -> add("Runs", test));
		rule.provenance().because().ifPresent(lines::add);
		rule.provenance().author().ifPresent(author -> lines
				.add("By " + author + rule.provenance().date().map(date -> " on " + date).orElse("")));
		agreement(rule.name());
	}

	/** Says who agrees with a rule or chain as it stands, who objects, and who spoke of it as it was. */
	private void agreement(String name) {
		Agreement.all(base).stream().filter(each -> each.name().equals(name)).findFirst().ifPresent(agreement -> {
			agreement.agreed().forEach(review -> lines.add("Agreed as it stands by " + review.reviewer() + " on " + review.date()));
			agreement.objections().forEach(review -> lines.add("Objection by " + review.reviewer() + " on " + review.date() + (review.note().isBlank() ? "" : ": " + review.note())));
			agreement.reviews().stream().filter(review -> !agreement.isFresh(review)).map(Review::reviewer).distinct()
					.forEach(reviewer -> lines.add(reviewer + " spoke of it as it was before"));
		});
	}

	private void repair(Repair repair) {
		title(repair.title(), repair.name());
		add("Fixes", repair.fixes());
		known(new Telling(base).doing(repair));
		pictures(repair.pictures());
		add("Caution", repair.cautions());
		add("Verified", repair.verify().stream().map(new Telling(base)::step).toList());
	}

	private void pictures(List<Picture> pictures) {
		pictures.forEach(picture -> add("Picture", picture.words() + " (" + picture.file() + ")"));
	}

	private void known(List<Telling.Line> known) {
		known.forEach(line -> {
			if (line.steps()) {
				add(line.label(), String.join(" ", line.texts()));
			} else {
				add(line.label(), line.texts());
			}
		});
	}

	private void title(String title, String name) {
		if (!title.equals(name)) {
			lines.add(title);
		}
	}

	private static String say(List<NamedValue> values) {
		return values.stream()
				.map(value -> value.title().equals(value.name()) ? value.name() : value.name() + " (" + value.title() + ")")
				.collect(Collectors.joining(", "));
	}

	private void add(String label, String text) {
		lines.add(label + ": " + text);
	}

	private void add(String label, Collection<String> names) {
		if (!names.isEmpty()) {
			Optional<String> more = names.size() > SHOWN ? Optional.of(", and " + (names.size() - SHOWN) + " more")
					: Optional.empty();
			add(label, names.stream().limit(SHOWN).collect(Collectors.joining(", ")) + more.orElse(""));
		}
	}
}
