package org.baywright.pack.format;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

import org.baywright.analysis.Flaw;
import org.baywright.model.Acceptance;
import org.baywright.model.PictureFile;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.FormatVersion;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest;
import org.baywright.pack.manifest.PackManifest.Accepted;
import org.baywright.pack.manifest.PackManifest.BuiltOn;
import org.baywright.pack.manifest.PackManifest.Entry;
import org.baywright.pack.manifest.PackManifest.Remark;
import org.baywright.pack.manifest.PackManifest.Standing;

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

	/** Returns a flaw as the manifest keeps it. */
	public static Standing standing(Flaw flaw) {
		return new Standing(flaw.id(), flaw.check(), flaw.severity(), place(flaw.span()), flaw.message(),
				flaw.story(), flaw.meaning(), flaw.accepted().map(ManifestForm::accepted));
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
		Json json = new Json().text("format", FORMAT).text("version", manifest.version().toString())
				.text("project", manifest.project())
				.value("tool", new Json().text("name", TOOL).text("version", manifest.tool()).object())
				.text("fingerprint", manifest.fingerprint()).value("entries", entries.object())
				.value("counts", counts.object()).texts("checks", manifest.checks())
				.list("flaws", manifest.flaws(), ManifestForm::flaw)
				.list("problems", manifest.problems(), ManifestForm::problem).whole("jobsPassed", manifest.cases());
		if (!manifest.builtOn().isEmpty()) {
			json.list("builtOn", manifest.builtOn(), ManifestForm::builtOn);
		}
		manifest.signOff().ifPresent(signOff -> json.value("signOff", AgreedForm.signOff(signOff)));
		if (!manifest.reviewed().isEmpty()) {
			json.list("reviewed", manifest.reviewed(), AgreedForm::reviewed);
		}
		return json.object();
	}

	/** Returns what a project builds on, as the manifest keeps it: each once. */
	public static List<BuiltOn> builtOn(RuleBase base) {
		return base.builtOn().stream().map(other -> new BuiltOn(other.path(), other.rules().name(), other.meaning())).distinct()
				.sorted(Comparator.comparing(BuiltOn::path)).toList();
	}

	private static JsonObject builtOn(BuiltOn other) {
		return new Json().text("path", other.path()).text("project", other.project()).text("meaning", other.meaning()).object();
	}

	private static BuiltOn builtOn(JsonIn in) throws PackException {
		return new BuiltOn(in.text("path"), in.text("project"), in.text("meaning"));
	}

	private static JsonObject flaw(Standing flaw) {
		Json json = new Json().text("id", flaw.id()).text("check", flaw.check())
				.text("severity", JsonIn.word(flaw.severity())).text("at", flaw.at())
				.text("message", flaw.message()).texts("story", flaw.story()).text("meaning", flaw.meaning());
		flaw.accepted().ifPresent(accepted -> json.value("accepted", new Json().text("reason", accepted.reason())
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
		in.old(version.isOlder());
		PackManifest manifest = new PackManifest(version, in.text("project"), in.object("tool", ManifestForm::tool),
				in.text("fingerprint"), in.object("entries", ManifestForm::entries),
				in.object("counts", ManifestForm::counts), in.texts("checks"), in.list(in.renamed("findings", "flaws"), ManifestForm::flaw),
				in.list("problems", ManifestForm::problem),
				in.has("builtOn") ? in.list("builtOn", ManifestForm::builtOn) : List.of(),
				in.optional("signOff", AgreedForm::signOff), in.has("reviewed") ? in.list("reviewed", AgreedForm::reviewed) : List.of(),
				in.whole("jobsPassed"));
		in.end();
		return manifest;
	}

	private static String tool(JsonIn in) throws PackException {
		in.text("name");
		return in.text("version");
	}

	private static SortedMap<String, Entry> entries(JsonIn in) throws PackException {
		SortedMap<String, Entry> entries = new TreeMap<>();
		SortedSet<String> names = new TreeSet<>(List.of("rules.html", "rules.json"));
		in.names().stream().filter(name -> PictureFile.ofName(name).isEmpty()).forEach(names::add);
		for (String name : names) {
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

	private static Standing flaw(JsonIn in) throws PackException {
		return new Standing(in.text("id"), in.text("check"), in.word("severity", Severity.class), in.optionalText("at"),
				in.text("message"), in.texts("story"), in.text("meaning"), in.optional("accepted", accepted -> new Accepted(
						accepted.text("reason"), accepted.optionalText("author"), accepted.optionalDate("date"))));
	}

	private static Remark problem(JsonIn in) throws PackException {
		return new Remark(in.text("id"), in.word("severity", Severity.class), in.optionalText("at"), in.text("message"),
				in.text("advice"));
	}
}
