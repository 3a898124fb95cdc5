package org.baywright.pack.format;

import java.util.List;

import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Notice;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Skill;
import org.baywright.model.VerifyStep;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Repairs, finished jobs and acceptances. */
final class WorkForm {

	private WorkForm() {
	}

	static JsonObject repair(RuleBase base, Repair repair) {
		String file = repair.span().file();
		Json json = FindingForm.pictures(Places.at(new Json(), repair.span()), repair.pictures(), file).text("name", repair.name()).text("title", repair.title());
		RuleForm.scope(json, base, repair.scope(), file);
		return json.texts("fixes", repair.fixes()).text("place", repair.place()).texts("steps", repair.steps()).texts("cautions", repair.cautions())
				.texts("tools", repair.tools()).decimal("takes", repair.takes()).decimal("cost", repair.cost())
				.text("skill", JsonIn.word(repair.skill()))
				.list("notices", repair.notices(), notice -> new Json().text("whom", JsonIn.word(notice.whom()))
						.text("text", notice.text()).text("why", notice.why()).object())
				.texts("changesForGood", repair.changesForGood()).flag("verified", repair.verified())
				.list("verify", repair.verify(), step -> Places.line(step(step), step.span(), file).object()).object();
	}

	private static Json step(VerifyStep step) {
		return step.match(
				(VerifyStep.Clear clear) -> new Json().text("kind", "clear").text("module", clear.module()),
				(VerifyStep.Cycle cycle) -> new Json().text("kind", "cycle").text("state", cycle.state()),
				(VerifyStep.Put put) -> new Json().text("kind", "set").value("setting", VehicleForm.setting(put.setting())),
				(VerifyStep.Read read) -> new Json().text("kind", "read").text("module", read.module()),
				(VerifyStep.Expect expect) -> new Json().text("kind", "expect").text("code", expect.code()).flag("present", expect.present()),
				(VerifyStep.ExpectSign expect) -> new Json().text("kind", "expectSign").text("sign", expect.sign())
						.flag("present", expect.present()).whole("tried", expect.tried()),
				(VerifyStep.Prepare prepare) -> new Json().text("kind", "prepare")
						.value("preparation", FindingForm.preparation(prepare.preparation())),
				(VerifyStep.Repeat repeat) -> {
					Json json = new Json().text("kind", "repeat").text("test", repeat.test());
					repeat.values().ifPresent(values -> json.value("values", ValuesForm.values(values)));
					return json;
				},
				(VerifyStep.RepeatWhatConfirmed repeat) -> new Json().text("kind", "repeatWhatConfirmed"));
	}

	static Repair repair(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Repair(in.text("name"), in.text("title"), RuleForm.scope(in, span), in.texts("fixes"), in.addedText("place"), FindingForm.pictures(in, span.file()), in.texts("steps"), in.texts("cautions"),
				in.texts("tools"), in.decimal("takes"), in.decimal("cost"), in.word("skill", Skill.class),
				notices(in), in.texts("changesForGood"), in.flag("verified"),
				in.list("verify", step -> step(step, span.file())), span);
	}

	/** In format 1 only the customer was told, and never why. */
	private static List<Notice> notices(JsonIn in) throws PackException {
		return !in.isOld()
				? in.list("notices", notice -> new Notice(notice.word("whom", Notice.Whom.class), notice.text("text"), notice.text("why")))
				: in.texts("tellCustomer").stream().map(text -> new Notice(Notice.Whom.CUSTOMER, text, "")).toList();
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
		case "expectSign" -> new VerifyStep.ExpectSign(in.text("sign"), in.flag("present"), in.whole("tried"), span);
		case "prepare" -> new VerifyStep.Prepare(in.object("preparation", FindingForm::preparation), span);
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
				.flag("referred", job.referred()).decimal("took", job.record().minutes()).decimal("spent", job.record().cost())
				.list("afterwards", job.record().afterwards(), reading -> FindingForm.reading(reading, file))
				.decimal("backAfter", job.record().backAfter()).text("vin", job.vin()).object();
	}

	static Case job(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Case(in.text("name"), in.text("family"),
				in.list("traits", reading -> FindingForm.reading(reading, span.file())),
				in.list("found", reading -> FindingForm.reading(reading, span.file())), in.texts("causes"),
				in.flag("referred"), record(in, span.file()), in.optionalText("vin"), span);
	}

	/** Format 1 kept nothing beside the end of a job. */
	private static Case.Record record(JsonIn in, String file) throws PackException {
		return in.isOld() ? Case.Record.NONE : new Case.Record(in.decimal("took"), in.decimal("spent"),
				in.list("afterwards", reading -> FindingForm.reading(reading, file)), in.optionalDecimal("backAfter"));
	}

	static JsonObject acceptance(Acceptance acceptance) {
		return Places.at(new Json(), acceptance.span()).text("flaw", acceptance.flawId())
				.text("meaning", acceptance.meaning()).text("reason", acceptance.reason())
				.text("author", acceptance.author()).text("date", acceptance.date()).object();
	}

	static Acceptance acceptance(JsonIn in) throws PackException {
		String meaning = in.text("meaning");
		String flaw = in.text(in.renamed("finding", "flaw"));
		return new Acceptance(meaning.isEmpty() ? flaw : flaw + "@" + meaning,
				in.text("reason"), in.optionalText("author"), in.optionalDate("date"), Places.at(in));
	}
}
