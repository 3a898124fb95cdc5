package org.baywright.pack.format;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

import org.baywright.analysis.Finding;
import org.baywright.model.Acceptance;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.FormatVersion;
import org.baywright.pack.PackException;
import org.baywright.pack.PackManifest;
import org.baywright.pack.PackManifest.Accepted;
import org.baywright.pack.PackManifest.Entry;
import org.baywright.pack.PackManifest.Remark;
import org.baywright.pack.PackManifest.Standing;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;

import com.google.gson.JsonObject;

/** The manifest as JSON: the content of {@code manifest.json}. */
public final class ManifestForm {

	private static final String FORMAT = "baywright-pack";
	private static final String TOOL = "Baywright";

	/** Kinds of elements with how many of them a rule base has. */
	private static final SortedMap<String, Function<RuleBase, List<?>>> KINDS = new TreeMap<>();

	static {
		KINDS.put("families", RuleBase::families);
		KINDS.put("states", RuleBase::states);
		KINDS.put("tools", RuleBase::tools);
		KINDS.put("hazards", RuleBase::hazards);
		KINDS.put("modules", RuleBase::modules);
		KINDS.put("codes", RuleBase::codes);
		KINDS.put("signs", RuleBase::signs);
		KINDS.put("parts", RuleBase::parts);
		KINDS.put("faults", RuleBase::faults);
		KINDS.put("exclusives", RuleBase::exclusives);
		KINDS.put("tests", RuleBase::tests);
		KINDS.put("laws", RuleBase::laws);
		KINDS.put("rules", RuleBase::rules);
		KINDS.put("repairs", RuleBase::repairs);
		KINDS.put("jobs", RuleBase::cases);
		KINDS.put("reviews", RuleBase::reviews);
		KINDS.put("acceptances", RuleBase::acceptances);
	}

	private ManifestForm() {
	}

	/** Returns how many elements of each kind a rule base has. */
	public static SortedMap<String, Integer> counts(RuleBase base) {
		SortedMap<String, Integer> counts = new TreeMap<>();
		KINDS.forEach((kind, list) -> counts.put(kind, list.apply(base).size()));
		return counts;
	}

	/** Returns a finding as the manifest keeps it. */
	public static Standing standing(Finding finding) {
		return new Standing(finding.id(), finding.check(), finding.severity(), place(finding.span()), finding.message(),
				finding.story(), finding.meaning(), finding.accepted().map(ManifestForm::accepted));
	}

	private static Accepted accepted(Acceptance acceptance) {
		return new Accepted(acceptance.reason(), acceptance.author(), acceptance.date());
	}

	/** Returns a problem as the manifest keeps it. */
	public static Remark remark(Problem problem) {
		return new Remark(problem.id(), problem.severity(), place(problem.span()), problem.message(), problem.advice());
	}

	private static Optional<String> place(Span span) {
		return span.file().isEmpty() ? Optional.empty() : Optional.of(span.file() + ":" + span.line());
	}

	/** Returns the manifest as JSON. */
	public static JsonObject write(PackManifest manifest) {
		Json entries = new Json();
		manifest.entries().forEach((name, entry) -> entries.value(name,
				new Json().whole("bytes", entry.bytes()).text("sha256", entry.sha256()).object()));
		Json counts = new Json();
		manifest.counts().forEach(counts::whole);
		return new Json().text("format", FORMAT).text("version", manifest.version().toString())
				.text("project", manifest.project())
				.value("tool", new Json().text("name", TOOL).text("version", manifest.tool()).object())
				.text("fingerprint", manifest.fingerprint()).value("entries", entries.object())
				.value("counts", counts.object()).texts("checks", manifest.checks())
				.list("findings", manifest.findings(), ManifestForm::finding)
				.list("problems", manifest.problems(), ManifestForm::problem).whole("jobsPassed", manifest.cases())
				.object();
	}

	private static JsonObject finding(Standing finding) {
		Json json = new Json().text("id", finding.id()).text("check", finding.check())
				.text("severity", JsonIn.word(finding.severity())).text("at", finding.at())
				.text("message", finding.message()).texts("story", finding.story()).text("meaning", finding.meaning());
		finding.accepted().ifPresent(accepted -> json.value("accepted", new Json().text("reason", accepted.reason())
				.text("author", accepted.author()).text("date", accepted.date()).object()));
		return json.object();
	}

	private static JsonObject problem(Remark problem) {
		return new Json().text("id", problem.id()).text("severity", JsonIn.word(problem.severity()))
				.text("at", problem.at()).text("message", problem.message()).text("advice", problem.advice()).object();
	}

	/**
	 * Reads a manifest.
	 *
	 * @param in the content of {@code manifest.json}
	 * @throws PackException if something is missing, does not belong there, or has the wrong form
	 */
	public static PackManifest read(JsonIn in) throws PackException {
		String format = in.text("format");
		if (!format.equals(FORMAT)) {
			throw in.unknown("format", format);
		}
		FormatVersion version = FormatVersion.of(in.text("version"));
		PackManifest manifest = new PackManifest(version, in.text("project"), in.object("tool", ManifestForm::tool),
				in.text("fingerprint"), in.object("entries", ManifestForm::entries),
				in.object("counts", ManifestForm::counts), in.texts("checks"), in.list("findings", ManifestForm::finding),
				in.list("problems", ManifestForm::problem), in.whole("jobsPassed"));
		in.end();
		return manifest;
	}

	private static String tool(JsonIn in) throws PackException {
		in.text("name");
		return in.text("version");
	}

	private static SortedMap<String, Entry> entries(JsonIn in) throws PackException {
		SortedMap<String, Entry> entries = new TreeMap<>();
		for (String name : List.of("rules.html", "rules.json")) {
			entries.put(name, in.object(name, entry -> new Entry(entry.whole("bytes"), entry.text("sha256"))));
		}
		return entries;
	}

	private static SortedMap<String, Integer> counts(JsonIn in) throws PackException {
		SortedMap<String, Integer> counts = new TreeMap<>();
		for (String kind : KINDS.keySet()) {
			counts.put(kind, in.whole(kind));
		}
		return counts;
	}

	private static Standing finding(JsonIn in) throws PackException {
		return new Standing(in.text("id"), in.text("check"), in.word("severity", Severity.class), in.optionalText("at"),
				in.text("message"), in.texts("story"), in.text("meaning"), in.optional("accepted", accepted -> new Accepted(
						accepted.text("reason"), accepted.optionalText("author"), accepted.optionalDate("date"))));
	}

	private static Remark problem(JsonIn in) throws PackException {
		return new Remark(in.text("id"), in.word("severity", Severity.class), in.optionalText("at"), in.text("message"),
				in.text("advice"));
	}
}
