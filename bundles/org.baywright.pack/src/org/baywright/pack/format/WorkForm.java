package org.baywright.pack.format;

import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Meaning;
import org.baywright.model.Repair;
import org.baywright.model.Review;
import org.baywright.model.RuleBase;
import org.baywright.model.Skill;
import org.baywright.model.VerifyStep;
import org.baywright.pack.PackException;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;

import com.google.gson.JsonObject;

/** Repairs, finished jobs, reviews and acceptances. */
final class WorkForm {

	private WorkForm() {
	}

	static JsonObject repair(Repair repair) {
		String file = repair.span().file();
		return Places.at(new Json(), repair.span()).text("name", repair.name()).text("title", repair.title())
				.texts("fixes", repair.fixes()).texts("steps", repair.steps()).texts("cautions", repair.cautions())
				.texts("tools", repair.tools()).decimal("takes", repair.takes()).decimal("cost", repair.cost())
				.text("skill", JsonIn.word(repair.skill())).texts("tellCustomer", repair.tellCustomer())
				.texts("changesForGood", repair.changesForGood()).flag("verified", repair.verified())
				.list("verify", repair.verify(), step -> Places.line(step(step), step.span(), file).object()).object();
	}

	private static Json step(VerifyStep step) {
		if (step instanceof VerifyStep.Clear clear) {
			return new Json().text("kind", "clear").text("module", clear.module());
		} else if (step instanceof VerifyStep.Cycle cycle) {
			return new Json().text("kind", "cycle").text("state", cycle.state());
		} else if (step instanceof VerifyStep.Put put) {
			return new Json().text("kind", "set").value("setting", VehicleForm.setting(put.setting()));
		} else if (step instanceof VerifyStep.Read read) {
			return new Json().text("kind", "read").text("module", read.module());
		} else if (step instanceof VerifyStep.Expect expect) {
			return new Json().text("kind", "expect").text("code", expect.code()).flag("present", expect.present());
		} else if (step instanceof VerifyStep.Repeat repeat) {
			Json json = new Json().text("kind", "repeat").text("test", repeat.test());
			repeat.values().ifPresent(values -> json.value("values", ValuesForm.values(values)));
			return json;
		}
		return new Json().text("kind", "repeatWhatConfirmed");
	}

	static Repair repair(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Repair(in.text("name"), in.text("title"), in.texts("fixes"), in.texts("steps"), in.texts("cautions"),
				in.texts("tools"), in.decimal("takes"), in.decimal("cost"), in.word("skill", Skill.class),
				in.texts("tellCustomer"), in.texts("changesForGood"), in.flag("verified"),
				in.list("verify", step -> step(step, span.file())), span);
	}

	private static VerifyStep step(JsonIn in, String file) throws PackException {
		var span = Places.line(in, file);
		String kind = in.text("kind");
		return switch (kind) {
		case "clear" -> new VerifyStep.Clear(in.text("module"), span);
		case "cycle" -> new VerifyStep.Cycle(in.text("state"), span);
		case "set" -> new VerifyStep.Put(in.object("setting", VehicleForm::setting), span);
		case "read" -> new VerifyStep.Read(in.text("module"), span);
		case "expect" -> new VerifyStep.Expect(in.text("code"), in.flag("present"), span);
		case "repeat" -> new VerifyStep.Repeat(in.text("test"), in.optional("values", ValuesForm::values), span);
		case "repeatWhatConfirmed" -> new VerifyStep.RepeatWhatConfirmed(span);
		default -> throw in.unknown("kind", kind);
		};
	}

	static JsonObject job(Case job) {
		String file = job.span().file();
		return Places.at(new Json(), job.span()).text("name", job.name()).text("family", job.family())
				.list("traits", job.traits(), reading -> FindingForm.reading(reading, file))
				.list("found", job.found(), reading -> FindingForm.reading(reading, file)).texts("causes", job.causes())
				.flag("referred", job.referred()).text("vin", job.vin()).object();
	}

	static Case job(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Case(in.text("name"), in.text("family"),
				in.list("traits", reading -> FindingForm.reading(reading, span.file())),
				in.list("found", reading -> FindingForm.reading(reading, span.file())), in.texts("causes"),
				in.flag("referred"), in.optionalText("vin"), span);
	}

	static JsonObject review(RuleBase base, Review review) {
		boolean stale = base.rule(review.rule()).map(rule -> !Meaning.fingerprint(rule).equals(review.meaning()))
				.orElse(true);
		return Places.at(new Json(), review.span()).text("rule", review.rule()).text("reviewer", review.reviewer())
				.text("date", review.date().toString()).flag("agrees", review.agrees()).text("note", review.note())
				.text("meaning", review.meaning()).flag("stale", stale).object();
	}

	static Review review(JsonIn in) throws PackException {
		in.derived("stale");
		return new Review(in.text("rule"), in.text("reviewer"), in.date("date"), in.flag("agrees"), in.text("note"),
				in.text("meaning"), Places.at(in));
	}

	static JsonObject acceptance(Acceptance acceptance) {
		return Places.at(new Json(), acceptance.span()).text("finding", acceptance.findingId())
				.text("meaning", acceptance.meaning()).text("reason", acceptance.reason())
				.text("author", acceptance.author()).text("date", acceptance.date()).object();
	}

	static Acceptance acceptance(JsonIn in) throws PackException {
		String meaning = in.text("meaning");
		return new Acceptance(meaning.isEmpty() ? in.text("finding") : in.text("finding") + "@" + meaning,
				in.text("reason"), in.optionalText("author"), in.optionalDate("date"), Places.at(in));
	}
}
