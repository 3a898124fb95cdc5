package org.baywright.pack.format;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

import org.baywright.model.Acceptance;
import org.baywright.model.Exclusive;
import org.baywright.model.Law;
import org.baywright.model.Named;
import org.baywright.model.Remark;
import org.baywright.model.Review;
import org.baywright.model.Reviewer;
import org.baywright.model.RuleBase;
import org.baywright.model.SignOff;
import org.baywright.model.Span;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.FormatVersion;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** The whole rule base: the content of {@code rules.json}. */
public final class RulesForm {

	private static final String FORMAT = "baywright-rules";

	private RulesForm() {
	}

	/**
	 * Returns the rule base with its elements in the order of their places, so that it does not matter in which order
	 * the files were read. Elements that stand nowhere keep their order.
	 */
	public static RuleBase sorted(RuleBase base) {
		RuleBase.Builder sorted = new RuleBase.Builder(base.name()).add(base);
		sort(sorted.families, Named::span);
		sort(sorted.states, Named::span);
		sort(sorted.tools, Named::span);
		sort(sorted.hazards, Named::span);
		sort(sorted.modules, Named::span);
		sort(sorted.codes, Named::span);
		sort(sorted.signs, Named::span);
		sort(sorted.parts, Named::span);
		sort(sorted.exclusives, Exclusive::span);
		sort(sorted.tests, Named::span);
		sort(sorted.laws, Law::span);
		sort(sorted.chains, Named::span);
		sort(sorted.rules, Named::span);
		sort(sorted.repairs, Named::span);
		sort(sorted.cases, Named::span);
		sort(sorted.signOffs, SignOff::span);
		sort(sorted.reviewers, Reviewer::span);
		sort(sorted.reviews, Review::span);
		sort(sorted.remarks, Remark::span);
		sort(sorted.acceptances, Acceptance::span);
		return sorted.build();
	}

	private static <T> void sort(List<T> elements, Function<? super T, Span> place) {
		elements.sort(Comparator.comparing(place));
	}

	/** Returns the rule base as JSON. */
	public static JsonObject write(RuleBase unsorted) {
		RuleBase base = sorted(unsorted);
		Json json = new Json().text("format", FORMAT).text("version", FormatVersion.CURRENT.toString())
				.text("project", base.name())
				.list("families", base.families(), family -> VehicleForm.family(base, family))
				.list("states", base.states(), VehicleForm::state).list("tools", base.tools(), VehicleForm::tool)
				.list("hazards", base.hazards(), VehicleForm::hazard)
				.list("modules", base.modules(), VehicleForm::module).list("codes", base.codes(), VehicleForm::code)
				.list("signs", base.signs(), sign -> FindingForm.sign(base, sign)).list("parts", base.parts(), FindingForm::part)
				.list("exclusives", base.exclusives(), FindingForm::exclusive)
				.list("tests", base.tests(), test -> FindingForm.test(base, test))
				.list("laws", base.laws(), law -> RuleForm.law(base, law))
				.list("chains", base.chains(), chain -> RuleForm.chain(base, chain))
				.list("rules", base.rules(), rule -> RuleForm.rule(base, rule))
				.list("repairs", base.repairs(), repair -> WorkForm.repair(base, repair)).list("jobs", base.cases(), WorkForm::job)
				.list("reviews", base.reviews(), review -> PeerForm.review(base, review))
				.list("acceptances", base.acceptances(), WorkForm::acceptance);
		base.workshop().ifPresent(workshop -> json.value("workshop", VehicleForm.workshop(workshop)));
		base.signOff().ifPresent(signOff -> json.value("signOff", PeerForm.signOff(signOff)));
		if (!base.reviewers().isEmpty()) {
			json.list("reviewers", base.reviewers(), PeerForm::reviewer);
		}
		if (!base.remarks().isEmpty()) {
			json.list("remarks", base.remarks(), PeerForm::remark);
		}
		return json.object();
	}

	/**
	 * Reads the elements of a rule base. Whether the names in them lead anywhere has not been looked at.
	 *
	 * @param in the content of {@code rules.json}
	 * @throws PackException if something is missing, does not belong there, or has the wrong form
	 */
	public static RuleBase.Builder read(JsonIn in) throws PackException {
		String format = in.text("format");
		if (!format.equals(FORMAT)) {
			throw in.unknown("format", format);
		}
		in.old(FormatVersion.of(in.text("version")).isOlder());
		RuleBase.Builder base = new RuleBase.Builder(in.text("project"));
		addTo(base.families, in.list("families", VehicleForm::family));
		addTo(base.states, in.list("states", VehicleForm::state));
		addTo(base.tools, in.list("tools", VehicleForm::tool));
		if (!in.isOld()) {
			in.optional("workshop", VehicleForm::workshop).ifPresent(base.workshops::add);
		}
		addTo(base.hazards, in.list("hazards", VehicleForm::hazard));
		addTo(base.modules, in.list("modules", VehicleForm::module));
		addTo(base.codes, in.list("codes", VehicleForm::code));
		addTo(base.signs, in.list("signs", FindingForm::sign));
		addTo(base.parts, in.list("parts", FindingForm::part));
		addTo(base.exclusives, in.list("exclusives", FindingForm::exclusive));
		addTo(base.tests, in.list("tests", FindingForm::test));
		addTo(base.laws, in.list("laws", RuleForm::law));
		addTo(base.chains, in.added("chains", RuleForm::chain));
		addTo(base.rules, in.list("rules", RuleForm::rule));
		addTo(base.repairs, in.list("repairs", WorkForm::repair));
		addTo(base.cases, in.list("jobs", WorkForm::job));
		addTo(base.reviews, in.list("reviews", PeerForm::review));
		in.optional("signOff", PeerForm::signOff).ifPresent(base.signOffs::add);
		addTo(base.reviewers, in.has("reviewers") ? in.list("reviewers", PeerForm::reviewer) : List.of());
		addTo(base.remarks, in.has("remarks") ? in.list("remarks", PeerForm::remark) : List.of());
		addTo(base.acceptances, in.list("acceptances", WorkForm::acceptance));
		in.end();
		return base;
	}

	private static <T> void addTo(Collection<T> all, List<T> some) {
		all.addAll(some);
	}
}
