package org.baywright.pack.format;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.Code;
import org.baywright.model.Cycle;
import org.baywright.model.Family;
import org.baywright.model.Hazard;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.RuleBase;
import org.baywright.model.Skill;
import org.baywright.model.State;
import org.baywright.model.StateSetting;
import org.baywright.model.Tool;
import org.baywright.model.Trait;
import org.baywright.model.VinPattern;
import org.baywright.model.Workshop;
import org.baywright.model.code.CodeText;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;
import org.baywright.model.code.RawCode;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Families, states, tools, the workshop, hazards, modules and codes. */
final class VehicleForm {

	private VehicleForm() {
	}

	static JsonObject family(RuleBase base, Family family) {
		String file = family.span().file();
		Json json = Places.at(new Json(), family.span()).text("name", family.name()).text("title", family.title())
				.text("parent", family.parent()).texts("systems", family.systems())
				.text("kind", JsonIn.word(family.kind()))
				.list("traits", family.traits(), trait -> Places
						.line(new Json().text("name", trait.name()).text("word", trait.word())
								.value("domain", ValuesForm.domain(trait.domain(), file)), trait.span(), file)
						.object())
				.list("vins", family.vins(), vin -> Places.line(new Json().text("pattern", vin.pattern())
						.flag("checkDigit", vin.checkDigit()), vin.span(), file).object())
				.list("cycles", family.cycles(), cycle -> Places.line(new Json().text("state", cycle.state())
						.list("steps", cycle.steps(), step -> new Json().text("value", step.value())
								.decimal("minutes", step.minutes()).object()), cycle.span(), file).object());
		return json.list("allTraits", base.traitsOf(family.name()).values(),
				trait -> new Json().text("name", trait.name()).text("word", trait.word())
						.text("from", owner(base, family, trait)).value("domain", ValuesForm.domain(trait.domain(), ""))
						.object())
				.object();
	}

	/** Returns the nearest family of the lineage that declares the trait. */
	private static String owner(RuleBase base, Family family, Trait trait) {
		return base.lineage(family.name()).stream()
				.filter(name -> base.family(name).map(one -> one.traits().contains(trait)).orElse(false)).findFirst()
				.orElse(family.name());
	}

	/** Format 1 knew only base families and others. */
	private static Family.Kind kind(JsonIn in) throws PackException {
		return !in.isOld() ? in.word("kind", Family.Kind.class)
				: in.flag("base") ? Family.Kind.BASE : Family.Kind.VEHICLES;
	}

	static Family family(JsonIn in) throws PackException {
		var span = Places.at(in);
		String file = span.file();
		in.derived("allTraits");
		return new Family(in.text("name"), in.text("title"), in.optionalText("parent"),
				in.isOld() ? List.of() : in.texts("systems"), kind(in),
				in.list("traits", trait -> new Trait(trait.text("name"), trait.text("word"),
						trait.object("domain", domain -> ValuesForm.domain(domain, file)), Places.line(trait, file))),
				in.list("vins", vin -> new VinPattern(vin.text("pattern"), vin.flag("checkDigit"), Places.line(vin, file))),
				in.added("cycles", cycle -> new Cycle(cycle.text("state"), cycle.list("steps",
						step -> new Cycle.Step(step.optionalText("value"), step.decimal("minutes"))), Places.line(cycle, file))),
				span);
	}

	static JsonObject state(State state) {
		return Places.at(new Json(), state.span()).text("name", state.name()).text("title", state.title())
				.list("values", state.values(), value -> {
					JsonObject json = ValuesForm.named(value, state.span().file());
					state.minutesTo(value.name()).ifPresent(minutes -> json.addProperty("takes", Meaning.number(minutes)));
					return json;
				}).object();
	}

	static State state(JsonIn in) throws PackException {
		var span = Places.at(in);
		Map<String, BigDecimal> minutes = new HashMap<>();
		List<NamedValue> values = in.list("values", value -> {
			NamedValue named = ValuesForm.named(value, span.file());
			if (!value.isOld()) {
				value.optionalDecimal("takes").ifPresent(takes -> minutes.put(named.name(), takes));
			}
			return named;
		});
		return new State(in.text("name"), in.text("title"), values, minutes, span);
	}

	static JsonObject setting(StateSetting setting) {
		return new Json().text("state", setting.state()).text("value", setting.value()).object();
	}

	static StateSetting setting(JsonIn in) throws PackException {
		return new StateSetting(in.text("state"), in.text("value"));
	}

	static JsonObject tool(Tool tool) {
		return Places.at(new Json(), tool.span()).text("name", tool.name()).text("title", tool.title())
				.decimal("cost", tool.cost()).object();
	}

	static Tool tool(JsonIn in) throws PackException {
		return new Tool(in.text("name"), in.text("title"), in.decimal("cost"), Places.at(in));
	}

	static JsonObject workshop(Workshop workshop) {
		Json json = Places.at(new Json(), workshop.span()).text("title", workshop.title()).decimal("hour", workshop.hour())
				.texts("lacks", workshop.lacks()).text("skill", workshop.skill().map(JsonIn::word));
		workshop.each().ifPresent(scan -> json.value("each", scan(scan)));
		workshop.all().ifPresent(scan -> json.value("all", scan(scan)));
		return json.object();
	}

	static Workshop workshop(JsonIn in) throws PackException {
		return new Workshop(in.text("title"), in.optionalDecimal("hour"), in.optional("each", VehicleForm::scan), in.optional("all", VehicleForm::scan),
				in.texts("lacks"), in.has("skill") ? Optional.of(in.word("skill", Skill.class)) : Optional.empty(), Places.at(in));
	}

	private static JsonObject scan(Workshop.Scan scan) {
		return new Json().texts("tools", scan.tools()).decimal("takes", scan.takes()).decimal("cost", scan.cost()).object();
	}

	private static Workshop.Scan scan(JsonIn in) throws PackException {
		return new Workshop.Scan(in.texts("tools"), in.decimal("takes"), in.decimal("cost"));
	}

	static JsonObject hazard(Hazard hazard) {
		return Places.at(new Json(), hazard.span()).text("name", hazard.name()).text("title", hazard.title())
				.texts("cautions", hazard.cautions()).texts("licensed", hazard.licensed())
				.texts("references", hazard.references()).object();
	}

	static Hazard hazard(JsonIn in) throws PackException {
		return new Hazard(in.text("name"), in.text("title"), in.texts("cautions"), in.texts("licensed"),
				in.texts("references"), Places.at(in));
	}

	static JsonObject module(Module module) {
		Json json = Places.at(new Json(), module.span()).text("name", module.name()).text("title", module.title())
				.texts("families", module.families()).list("answersIn", module.answersIn(), VehicleForm::setting);
		module.asking().ifPresent(scan -> json.value("asking", scan(scan)));
		return json.object();
	}

	static Module module(JsonIn in) throws PackException {
		Module free = new Module(in.text("name"), in.text("title"), in.texts("families"),
				in.list("answersIn", VehicleForm::setting), Places.at(in));
		return in.optional("asking", VehicleForm::scan).map(scan -> new Module(free.name(), free.title(), free.families(), free.answersIn(), scan.tools(),
				scan.takes(), scan.cost(), free.span())).orElse(free);
	}

	static JsonObject code(Code code) {
		return Places.at(new Json(), code.span()).text("name", code.name()).text("title", code.title())
				.text("module", code.module()).value("text", text(code.text()))
				.list("runsIn", code.runsIn(), VehicleForm::setting)
				.list("runsAfter", code.runsAfter(), FindingForm::preparation).object();
	}

	private static JsonObject text(CodeText text) {
		Json json = new Json().text("display", text.display());
		if (text instanceof Dtc dtc) {
			json.text("kind", "dtc").text("code", dtc.code()).text("sub", dtc.sub());
		} else if (text instanceof J1939Code j1939) {
			json.text("kind", "j1939").whole("spn", j1939.spn()).whole("fmi", j1939.fmi());
		} else {
			json.text("kind", "raw").text("text", ((RawCode) text).text());
		}
		return json.object();
	}

	static Code code(JsonIn in) throws PackException {
		return new Code(in.text("name"), in.text("title"), in.text("module"), in.object("text", VehicleForm::text),
				in.added("runsIn", VehicleForm::setting), in.added("runsAfter", FindingForm::preparation), Places.at(in));
	}

	private static CodeText text(JsonIn in) throws PackException {
		in.derived("display");
		String kind = in.text("kind");
		switch (kind) {
		case "dtc":
			Dtc dtc = new Dtc(in.text("code"), in.text("sub"));
			if (Dtc.wrongCode(dtc.code()).isPresent() || !dtc.sub().isEmpty() && Dtc.wrongSub(dtc.sub()).isPresent()
					|| !Dtc.of(dtc.code(), dtc.sub()).equals(dtc)) {
				throw in.wrong("is no trouble code of SAE J2012 / ISO 15031-6: " + dtc.display() + ".");
			}
			return dtc;
		case "j1939":
			J1939Code code = new J1939Code(in.whole("spn"), in.whole("fmi"));
			if (code.wrong().isPresent()) {
				throw in.wrong("is no trouble code of SAE J1939-73: " + code.wrong().get());
			}
			return code;
		case "raw":
			return new RawCode(in.text("text"));
		default:
			throw in.unknown("kind", kind);
		}
	}
}
