package org.baywright.pack.format;

import java.util.List;

import org.baywright.model.Remark;
import org.baywright.model.Reply;
import org.baywright.model.Review;
import org.baywright.model.Reviewer;
import org.baywright.model.RuleBase;
import org.baywright.model.SignOff;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Peer review: the sign-off, reviewers, reviews and remarks. What nobody wrote is left out. */
final class PeerForm {

	private PeerForm() {
	}

	static JsonObject signOff(SignOff signOff) {
		String file = signOff.span().file();
		return Places.at(new Json(), signOff.span()).whole("agree", signOff.agree()).flag("withoutAuthor", signOff.withoutAuthor())
				.list("hazards", signOff.hazards(), of -> Places.line(new Json(), of.span(), file).text("hazard", of.hazard())
						.text("qualification", of.qualification()).object()).object();
	}

	static SignOff signOff(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new SignOff(in.whole("agree"), in.flag("withoutAuthor"), in.list("hazards",
				of -> new SignOff.OfHazard(of.text("hazard"), of.text("qualification"), Places.line(of, span.file()))), span);
	}

	static JsonObject reviewer(Reviewer reviewer) {
		return Places.at(new Json(), reviewer.span()).text("name", reviewer.name()).texts("qualifications", reviewer.qualifications()).object();
	}

	static Reviewer reviewer(JsonIn in) throws PackException {
		return new Reviewer(in.text("name"), in.texts("qualifications"), Places.at(in));
	}

	static JsonObject review(RuleBase base, Review review) {
		boolean stale = !base.meaning(review.rule()).filter(review.meaning()::equals).isPresent();
		Json json = Places.at(new Json(), review.span()).text("rule", review.rule()).text("reviewer", review.reviewer())
				.text("date", review.date().toString()).flag("agrees", review.agrees()).text("note", review.note())
				.text("meaning", review.meaning()).flag("stale", stale);
		return replies(json, review.replies(), review.span().file()).object();
	}

	static Review review(JsonIn in) throws PackException {
		in.derived("stale");
		var span = Places.at(in);
		return new Review(in.text("rule"), in.text("reviewer"), in.date("date"), in.flag("agrees"), in.text("note"),
				in.text("meaning"), replies(in, span.file()), span);
	}

	static JsonObject remark(Remark remark) {
		Json json = Places.at(new Json(), remark.span()).text("rule", remark.rule()).text("change", remark.change()).text("author", remark.author())
				.text("date", remark.date().toString()).text("note", remark.note()).text("meaning", remark.meaning()).text("wording", remark.line());
		return replies(json, remark.replies(), remark.span().file()).object();
	}

	static Remark remark(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Remark(in.optionalText("rule"), in.text("change"), in.text("author"), in.date("date"), in.text("note"), in.text("meaning"),
				in.optionalText("wording"), replies(in, span.file()), span);
	}

	private static Json replies(Json json, List<Reply> replies, String file) {
		return replies.isEmpty() ? json : json.list("replies", replies, reply -> Places.line(new Json(), reply.span(), file).flag("settles", reply.settles())
				.text("author", reply.author()).text("date", reply.date().toString()).text("text", reply.text()).object());
	}

	private static List<Reply> replies(JsonIn in, String file) throws PackException {
		return !in.has("replies") ? List.of() : in.list("replies", reply -> new Reply(reply.flag("settles"), reply.text("author"), reply.date("date"),
				reply.text("text"), Places.line(reply, file)));
	}
}
