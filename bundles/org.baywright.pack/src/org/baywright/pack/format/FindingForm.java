package org.baywright.pack.format;

import java.util.List;

import org.baywright.model.CodeReading;
import org.baywright.model.Exclusive;
import org.baywright.model.Fault;
import org.baywright.model.Part;
import org.baywright.model.Picture;
import org.baywright.model.Precaution;
import org.baywright.model.Preparation;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.baywright.model.Skill;
import org.baywright.model.Test;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Signs, parts with their faults, tests, and what was found in a job. */
final class FindingForm {

	private FindingForm() {
	}

	static JsonObject sign(RuleBase base, Sign sign) {
		Json json = Places.at(new Json(), sign.span()).text("name", sign.name()).text("title", sign.title());
		RuleForm.scope(json, base, sign.scope(), sign.span().file());
		return json.flag("intermittent", sign.intermittent())
				.list("precautions", sign.precautions(), precaution -> new Json().text("kind", JsonIn.word(precaution.kind()))
						.text("text", precaution.text()).object())
				.object();
	}

	static Sign sign(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Sign(in.text("name"), in.text("title"), RuleForm.scope(in, span), in.flag("intermittent"), in.added("precautions",
				precaution -> new Precaution(precaution.word("kind", Precaution.Kind.class), precaution.text("text"))), span);
	}

	/** Adds pictures, if there are any. */
	static Json pictures(Json json, List<Picture> pictures, String file) {
		return pictures.isEmpty() ? json : json.list("pictures", pictures,
				picture -> Places.line(new Json().text("file", picture.file()).text("words", picture.words()), picture.span(), file).object());
	}

	static List<Picture> pictures(JsonIn in, String file) throws PackException {
		return !in.has("pictures") ? List.of() : in.list("pictures", picture -> new Picture(picture.text("file"), picture.text("words"), Places.line(picture, file)));
	}

	static JsonObject part(Part part) {
		String file = part.span().file();
		return pictures(Places.at(new Json(), part.span()), part.pictures(), file).text("name", part.name()).text("title", part.title())
				.text("place", part.place()).texts("hazards", part.hazards())
				.list("faults", part.faults(), fault -> Places.line(new Json().text("name", fault.name())
						.text("title", fault.title()).whole("seen", fault.seen()), fault.span(), file).object())
				.object();
	}

	static Part part(JsonIn in) throws PackException {
		var span = Places.at(in);
		String name = in.text("name");
		return new Part(name, in.text("title"), in.addedText("place"), pictures(in, span.file()), in.texts("hazards"), in.list("faults", fault -> new Fault(
				fault.text("name"), fault.text("title"), name, fault.whole("seen"), Places.line(fault, span.file()))), span);
	}

	static JsonObject exclusive(Exclusive exclusive) {
		return Places.at(new Json(), exclusive.span()).texts("faults", exclusive.faults()).object();
	}

	static Exclusive exclusive(JsonIn in) throws PackException {
		return new Exclusive(in.texts("faults"), Places.at(in));
	}

	static JsonObject test(RuleBase base, Test test) {
		Json json = pictures(Places.at(new Json(), test.span()), test.pictures(), test.span().file()).text("name", test.name()).text("title", test.title());
		RuleForm.scope(json, base, test.scope(), test.span().file());
		return json.value("domain", ValuesForm.domain(test.domain(), test.span().file())).text("seenWith", test.seenWith()).text("part", test.part()).text("place", test.place())
				.texts("tools", test.tools()).list("states", test.states(), VehicleForm::setting)
				.list("before", test.prepare(), FindingForm::preparation).decimal("takes", test.takes()).decimal("cost", test.cost())
				.text("skill", JsonIn.word(test.skill())).texts("fits", test.fits()).texts("disturbs", test.disturbs())
				.texts("cautions", test.cautions()).object();
	}

	static Test test(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Test(in.text("name"), in.text("title"), RuleForm.scope(in, span),
				in.object("domain", domain -> ValuesForm.domain(domain, span.file())), in.addedText("seenWith"), in.optionalText("part"),
				in.addedText("place"), pictures(in, span.file()), in.texts("tools"), in.list("states", VehicleForm::setting), prepare(in), in.decimal("takes"),
				in.decimal("cost"), in.word("skill", Skill.class), in.texts("fits"), in.texts("disturbs"),
				in.texts("cautions"), span);
	}

	/** In format 1 there were sentences only. */
	private static List<Preparation> prepare(JsonIn in) throws PackException {
		return !in.isOld() ? in.list("before", FindingForm::preparation)
				: in.texts("prepare").stream().<Preparation>map(Preparation.Do::new).toList();
	}

	static JsonObject preparation(Preparation preparation) {
		if (preparation instanceof Preparation.Do made) {
			return new Json().text("kind", "do").text("text", made.text()).object();
		} else if (preparation instanceof Preparation.Wait wait) {
			return new Json().text("kind", "wait").decimal("minutes", wait.minutes()).object();
		}
		Preparation.Drive drive = (Preparation.Drive) preparation;
		Json json = new Json().text("kind", "drive").decimal("minutes", drive.minutes()).text("how", drive.how());
		drive.speed().ifPresent(speed -> json.value("speed", ValuesForm.values(speed)));
		return json.object();
	}

	static Preparation preparation(JsonIn in) throws PackException {
		String kind = in.text("kind");
		return switch (kind) {
		case "do" -> new Preparation.Do(in.text("text"));
		case "wait" -> new Preparation.Wait(in.decimal("minutes"));
		case "drive" -> new Preparation.Drive(in.optional("speed", ValuesForm::values), in.decimal("minutes"), in.text("how"));
		default -> throw in.unknown("kind", kind);
		};
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
