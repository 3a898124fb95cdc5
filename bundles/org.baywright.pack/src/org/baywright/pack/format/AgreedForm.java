package org.baywright.pack.format;

import java.util.List;
import java.util.Optional;

import org.baywright.model.Agreement;
import org.baywright.model.Review;
import org.baywright.model.RuleBase;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest.OfHazard;
import org.baywright.pack.manifest.PackManifest.Opinion;
import org.baywright.pack.manifest.PackManifest.Reviewed;
import org.baywright.pack.manifest.PackManifest.SignOff;

import com.google.gson.JsonObject;

/** What the manifest says of peer review: the sign-off, and who agreed with what. */
public final class AgreedForm {

	private AgreedForm() {
	}

	/**
	 * Returns the sign-off of a project as the manifest keeps it.
	 *
	 * @param met whether nothing breaches it
	 */
	public static Optional<SignOff> signOff(RuleBase base, boolean met) {
		return base.signOff().map(asked -> new SignOff(asked.agree(), asked.withoutAuthor(),
				asked.hazards().stream().map(of -> new OfHazard(of.hazard(), of.qualification())).toList(), met));
	}

	/** Returns what peers said of each rule and chain, as the manifest keeps it. */
	public static List<Reviewed> reviewed(RuleBase unsorted) {
		return Agreement.all(RulesForm.sorted(unsorted)).stream().filter(rule -> !rule.reviews().isEmpty())
				.map(rule -> new Reviewed(rule.name(), rule.meaning(), opinions(rule))).toList();
	}

	private static List<Opinion> opinions(Agreement rule) {
		List<Review> agreed = rule.agreed();
		List<Review> objections = rule.objections();
		return rule.reviews().stream().map(review -> new Opinion(review.reviewer(), review.date(), review.agrees(), review.meaning(),
				agreed.contains(review) || objections.contains(review))).toList();
	}

	static JsonObject signOff(SignOff signOff) {
		return new Json().whole("agree", signOff.agree()).flag("withoutAuthor", signOff.withoutAuthor())
				.list("hazards", signOff.hazards(), of -> new Json().text("hazard", of.hazard()).text("qualification", of.qualification()).object())
				.flag("met", signOff.met()).object();
	}

	static SignOff signOff(JsonIn in) throws PackException {
		return new SignOff(in.whole("agree"), in.flag("withoutAuthor"),
				in.list("hazards", of -> new OfHazard(of.text("hazard"), of.text("qualification"))), in.flag("met"));
	}

	static JsonObject reviewed(Reviewed reviewed) {
		return new Json().text("rule", reviewed.rule()).text("meaning", reviewed.meaning())
				.list("opinions", reviewed.opinions(), opinion -> new Json().text("reviewer", opinion.reviewer()).text("date", opinion.date().toString())
						.flag("agrees", opinion.agrees()).text("meaning", opinion.meaning()).flag("stands", opinion.stands()).object()).object();
	}

	static Reviewed reviewed(JsonIn in) throws PackException {
		return new Reviewed(in.text("rule"), in.text("meaning"), in.list("opinions", opinion -> new Opinion(opinion.text("reviewer"),
				opinion.date("date"), opinion.flag("agrees"), opinion.text("meaning"), opinion.flag("stands"))));
	}
}
