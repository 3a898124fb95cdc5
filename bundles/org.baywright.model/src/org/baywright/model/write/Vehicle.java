package org.baywright.model.write;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.model.Code;
import org.baywright.model.Cycle;
import org.baywright.model.Domain;
import org.baywright.model.Exclusive;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Part;
import org.baywright.model.Picture;
import org.baywright.model.Precaution;
import org.baywright.model.Sign;
import org.baywright.model.State;
import org.baywright.model.Tool;
import org.baywright.model.Trait;
import org.baywright.model.Workshop;
import org.baywright.model.Written;
import org.baywright.model.code.CodeText;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;

/** What is declared once and used everywhere, as text. */
final class Vehicle {

	private Vehicle() {
	}

	static Block family(Family family) {
		String word = switch (family.kind()) {
		case VEHICLES -> "family";
		case BASE -> "base family";
		case SYSTEM -> "system";
		};
		Block block = new Block(word, family.name(), family.title());
		family.parent().ifPresent(parent -> block.more("like", Written.name(parent)));
		block.more("has", Values.names(family.systems()));
		family.traits().forEach(trait -> block.row("trait " + Written.name(trait.name()), ": " + values(trait)));
		family.vins().forEach(vin -> block.line("vin " + Written.text(vin.pattern()) + (vin.checkDigit() ? " check_digit" : "")));
		family.cycles().forEach(cycle -> block.line("cycle " + Written.name(cycle.state()) + " : "
				+ cycle.steps().stream().map(Vehicle::step).collect(Collectors.joining(", "))));
		return block;
	}

	private static String step(Cycle.Step step) {
		return step.value().map(Written::value).orElseGet(() -> "wait " + Values.time(step.minutes()));
	}

	private static String values(Trait trait) {
		if (trait.domain() instanceof Domain.Quantity range) {
			return (trait.word().isEmpty() ? "" : Written.name(trait.word()) + " ") + Values.number(range.low()) + " .. "
					+ Values.number(range.high());
		}
		return values(((Domain.Names) trait.domain()).values());
	}

	static String values(List<NamedValue> values) {
		return values.stream().map(value -> Written.value(value.name())
				+ (value.title().equals(value.name()) ? "" : " " + Written.text(value.title()))).collect(Collectors.joining(", "));
	}

	static Block state(State state) {
		return new Block("state", state.name(), state.title()).more(":").more(state.values().stream()
				.map(value -> values(List.of(value)) + state.minutesTo(value.name()).map(minutes -> " takes " + Values.time(minutes)).orElse(""))
				.collect(Collectors.joining(", ")));
	}

	static Block tool(Tool tool) {
		return new Block("tool", tool.name(), tool.title()).more("cost", tool.cost().signum() == 0 ? "" : Values.number(tool.cost()));
	}

	static Block workshop(Workshop workshop) {
		Block block = new Block("workshop" + (workshop.title().isEmpty() ? "" : " " + Written.text(workshop.title()))).open();
		workshop.hour().ifPresent(hour -> block.line("hour " + Values.number(hour)));
		workshop.each().ifPresent(scan -> block.line(("scan each " + effort(scan)).strip()));
		workshop.all().ifPresent(scan -> block.line(("scan all " + effort(scan)).strip()));
		block.line("lacks", Values.names(workshop.lacks()));
		workshop.skill().ifPresent(skill -> block.line("skill " + skill.name().toLowerCase(Locale.ROOT)));
		return block;
	}

	private static String effort(Workshop.Scan scan) {
		return Stream.of(scan.takes().signum() == 0 ? "" : "takes " + Values.time(scan.takes()),
				scan.cost().signum() == 0 ? "" : "cost " + Values.number(scan.cost()),
				scan.tools().isEmpty() ? "" : "needs " + Values.names(scan.tools())).filter(text -> !text.isEmpty()).collect(Collectors.joining(" "));
	}

	static Block hazard(Hazard hazard) {
		return new Block("hazard", hazard.name(), hazard.title()).open().texts("caution", hazard.cautions())
				.texts("licensed", hazard.licensed()).texts("reference", hazard.references());
	}

	static Block module(Module module) {
		Block block = new Block("module", module.name(), module.title()).more("on", Values.names(module.families()))
				.more("answers in", module.answersIn().stream().map(Values::setting).collect(Collectors.joining(" or ")));
		module.asking().ifPresent(scan -> block.more(effort(scan)));
		return block;
	}

	static Block code(Code code) {
		String runs = Stream.concat(code.runsIn().stream().map(setting -> "in " + Values.setting(setting)),
				code.runsAfter().stream().map(Values::preparation)).collect(Collectors.joining(", "));
		return new Block("code", code.name(), code.title()).more("on " + Written.name(code.module()) + " = " + text(code.text()))
				.more("runs", runs);
	}

	private static String text(CodeText text) {
		if (text instanceof Dtc dtc) {
			return "dtc " + dtc.code() + (dtc.sub().isEmpty() ? "" : " sub " + dtc.sub());
		}
		return text instanceof J1939Code code ? "j1939 spn " + code.spn() + " fmi " + code.fmi() : "raw " + Written.text(text.display());
	}

	static Block sign(Values values, Sign sign) {
		Block block = new Block("sign", sign.name(), sign.title());
		if (sign.intermittent()) {
			block.more("intermittent");
		}
		block.more("for", values.vehicles(sign.scope()));
		sign.precautions().forEach(precaution -> block.more(precaution(precaution)));
		return block;
	}

	private static String precaution(Precaution precaution) {
		return precaution.kind().name().toLowerCase(Locale.ROOT) + (precaution.text().isEmpty() ? "" : " " + Written.text(precaution.text()));
	}

	static String picture(Picture picture) {
		return Written.text(picture.file()) + " " + Written.text(picture.words());
	}

	static Block part(Part part) {
		Block block = new Block("part", part.name(), part.title());
		part.place().ifPresent(place -> block.more("place", Written.text(place)));
		block.more("hazards", Values.names(part.hazards())).open();
		part.pictures().forEach(picture -> block.line("picture", picture(picture)));
		part.faults().forEach(fault -> block.row(fault(fault)));
		return block;
	}

	/** Returns the cells of a clause. */
	static String[] fault(Fault fault) {
		String name = fault.name().substring(fault.part().length() + 1);
		return new String[] { "fault " + Written.name(name), fault.title().equals(name) ? "" : Written.text(fault.title()),
				fault.seen() == 0 ? "" : "seen " + fault.seen() };
	}

	static Block exclusive(Exclusive exclusive) {
		return new Block("exclusive " + Values.names(exclusive.faults()));
	}
}
