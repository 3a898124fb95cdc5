package org.baywright.pack.format;

import org.baywright.model.CodeReading;
import org.baywright.model.Exclusive;
import org.baywright.model.Fault;
import org.baywright.model.Part;
import org.baywright.model.Reading;
import org.baywright.model.Sign;
import org.baywright.model.Skill;
import org.baywright.model.Test;
import org.baywright.pack.PackException;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;

import com.google.gson.JsonObject;

/** Signs, parts with their faults, tests, and what was found in a job. */
final class FindingForm {

	private FindingForm() {
	}

	static JsonObject sign(Sign sign) {
		return Places.at(new Json(), sign.span()).text("name", sign.name()).text("title", sign.title())
				.flag("intermittent", sign.intermittent()).object();
	}

	static Sign sign(JsonIn in) throws PackException {
		return new Sign(in.text("name"), in.text("title"), in.flag("intermittent"), Places.at(in));
	}

	static JsonObject part(Part part) {
		String file = part.span().file();
		return Places.at(new Json(), part.span()).text("name", part.name()).text("title", part.title())
				.texts("hazards", part.hazards())
				.list("faults", part.faults(), fault -> Places.line(new Json().text("name", fault.name())
						.text("title", fault.title()).whole("seen", fault.seen()), fault.span(), file).object())
				.object();
	}

	static Part part(JsonIn in) throws PackException {
		var span = Places.at(in);
		String name = in.text("name");
		return new Part(name, in.text("title"), in.texts("hazards"), in.list("faults", fault -> new Fault(
				fault.text("name"), fault.text("title"), name, fault.whole("seen"), Places.line(fault, span.file()))), span);
	}

	static JsonObject exclusive(Exclusive exclusive) {
		return Places.at(new Json(), exclusive.span()).texts("faults", exclusive.faults()).object();
	}

	static Exclusive exclusive(JsonIn in) throws PackException {
		return new Exclusive(in.texts("faults"), Places.at(in));
	}

	static JsonObject test(Test test) {
		return Places.at(new Json(), test.span()).text("name", test.name()).text("title", test.title())
				.value("domain", ValuesForm.domain(test.domain(), test.span().file())).text("part", test.part())
				.texts("tools", test.tools()).list("states", test.states(), VehicleForm::setting)
				.texts("prepare", test.prepare()).decimal("takes", test.takes()).decimal("cost", test.cost())
				.text("skill", JsonIn.word(test.skill())).texts("fits", test.fits()).texts("disturbs", test.disturbs())
				.texts("cautions", test.cautions()).object();
	}

	static Test test(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Test(in.text("name"), in.text("title"),
				in.object("domain", domain -> ValuesForm.domain(domain, span.file())), in.optionalText("part"),
				in.texts("tools"), in.list("states", VehicleForm::setting), in.texts("prepare"), in.decimal("takes"),
				in.decimal("cost"), in.word("skill", Skill.class), in.texts("fits"), in.texts("disturbs"),
				in.texts("cautions"), span);
	}

	static JsonObject reading(Reading reading, String file) {
		return Places.line(reading(reading), reading.span(), file).object();
	}

	private static Json reading(Reading reading) {
		if (reading instanceof Reading.Named named) {
			return new Json().text("kind", "named").text("subject", named.subject()).text("value", named.value());
		} else if (reading instanceof Reading.Measured measured) {
			return new Json().text("kind", "measured").text("subject", measured.subject())
					.decimal("value", measured.value());
		} else if (reading instanceof Reading.SignSeen seen) {
			return new Json().text("kind", "sign").text("subject", seen.subject()).flag("present", seen.present());
		} else if (reading instanceof Reading.CodeRead read) {
			return new Json().text("kind", "code").text("subject", read.subject())
					.text("reading", JsonIn.word(read.reading()));
		}
		Reading.ModuleAsked asked = (Reading.ModuleAsked) reading;
		return new Json().text("kind", "module").text("subject", asked.subject()).flag("answers", asked.answers());
	}

	static Reading reading(JsonIn in, String file) throws PackException {
		var span = Places.line(in, file);
		String subject = in.text("subject");
		String kind = in.text("kind");
		return switch (kind) {
		case "named" -> new Reading.Named(subject, in.text("value"), span);
		case "measured" -> new Reading.Measured(subject, in.decimal("value"), span);
		case "sign" -> new Reading.SignSeen(subject, in.flag("present"), span);
		case "code" -> new Reading.CodeRead(subject, in.word("reading", CodeReading.class), span);
		case "module" -> new Reading.ModuleAsked(subject, in.flag("answers"), span);
		default -> throw in.unknown("kind", kind);
		};
	}
}
