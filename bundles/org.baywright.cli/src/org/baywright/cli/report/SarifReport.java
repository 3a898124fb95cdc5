package org.baywright.cli.report;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Place;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Kinds;
import org.baywright.model.Acceptance;
import org.baywright.model.Meaning;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.ToolVersion;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;

/** What was found in SARIF 2.1.0 (OASIS), which editors and build servers read. One run for each project. */
public final class SarifReport {

	private static final String SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
	private static final String PROJECT_BASE = "PROJECT";

	private final Function<String, String> help;
	private Project project;
	private Map<String, Integer> ruleIndex;

	private SarifReport(Function<String, String> help) {
		this.help = help;
	}

	/**
	 * Returns the report.
	 *
	 * @param help returns the help page of a check, in Markdown; the empty text if there is none
	 */
	public static String of(List<Project> projects, Function<String, String> help) {
		SarifReport report = new SarifReport(help);
		JsonArray runs = new JsonArray();
		projects.forEach(project -> runs.add(report.run(project)));
		JsonObject log = new JsonObject();
		log.addProperty("$schema", SCHEMA);
		log.addProperty("version", "2.1.0");
		log.add("runs", runs);
		return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(log) + "\n";
	}

	private JsonObject run(Project next) {
		project = next;
		ruleIndex = new TreeMap<>();
		JsonArray rules = rules();
		JsonArray results = new JsonArray();
		project.problems().forEach(problem -> results.add(result(problem)));
		project.report().flaws().forEach(flaw -> results.add(result(flaw)));

		JsonObject driver = new JsonObject();
		driver.addProperty("name", "Baywright");
		driver.addProperty("version", ToolVersion.CURRENT);
		driver.addProperty("semanticVersion", ToolVersion.CURRENT);
		driver.add("rules", rules);
		JsonObject run = new JsonObject();
		run.add("tool", object("driver", driver));
		run.add("automationDetails", object("id", "baywright/" + project.rules().name() + "/"));
		run.addProperty("columnKind", "utf16CodeUnits");
		JsonObject invocation = new JsonObject();
		invocation.addProperty("executionSuccessful", true);
		run.add("invocations", list(invocation));
		if (isAbsolute()) {
			run.add("originalUriBaseIds",
					object(PROJECT_BASE, object("description", message("The folder of the rule project."))));
		}
		run.add("results", results);
		return run;
	}

	private JsonArray rules() {
		JsonArray rules = new JsonArray();
		for (RuleCheck about : Kinds.all()) {
			rule(rules, about.id(), about.summary() + ".", about.severity());
		}
		for (Problem problem : project.problems()) {
			if (!ruleIndex.containsKey(problem.id())) {
				rule(rules, problem.id(), "The text of a rule file is wrong: " + problem.kind().title() + ".", problem.severity());
			}
		}
		return rules;
	}

	private void rule(JsonArray rules, String id, String summary, Severity severity) {
		ruleIndex.put(id, rules.size());
		JsonObject rule = new JsonObject();
		rule.addProperty("id", id);
		rule.add("shortDescription", message(summary));
		rule.add("defaultConfiguration", object("level", level(severity)));
		String page = help.apply(id);
		if (!page.isEmpty()) {
			JsonObject text = message(page);
			text.addProperty("markdown", page);
			rule.add("help", text);
		}
		rules.add(rule);
	}

	private static String level(Severity severity) {
		return switch (severity) {
		case ERROR -> "error";
		case WARNING -> "warning";
		case NOTE -> "note";
		};
	}

	private JsonObject result(Problem problem) {
		String text = problem.message() + (problem.advice().isEmpty() ? "" : " " + problem.advice());
		JsonObject result = result(problem.id(), text, problem.span());
		result.addProperty("level", level(problem.severity()));
		result.add("partialFingerprints", object("problem/v1",
				Meaning.fingerprint(problem.id() + "\n" + problem.span().file() + "\n" + problem.message())));
		return result;
	}

	private JsonObject result(Flaw flaw) {
		JsonObject result = result(flaw.check(), text(flaw), flaw.span());
		if (flaw.check().equals(Project.UNDECIDED)) {
			// 3.27.9: too little is known to decide; 3.27.10: such a result has no level
			result.addProperty("kind", "open");
			result.addProperty("level", "none");
		} else {
			result.addProperty("level", level(flaw.severity()));
		}
		JsonObject fingerprints = object("flaw/v1", flaw.id());
		fingerprints.addProperty("meaning/v1", flaw.meaning());
		result.add("partialFingerprints", fingerprints);
		List<Place> places = new ArrayList<>(flaw.related());
		if (flaw.evidence() instanceof Evidence.Core core) {
			places.addAll(core.lines());
		}
		JsonArray related = new JsonArray();
		for (Place place : places) {
			JsonObject location = location(place.span());
			location.addProperty("id", related.size());
			location.add("message", message(place.note()));
			related.add(location);
		}
		if (!related.isEmpty()) {
			result.add("relatedLocations", related);
		}
		flaw.accepted().ifPresent(accepted -> result.add("suppressions", list(suppression(accepted))));
		return result;
	}

	private static String text(Flaw flaw) {
		boolean core = flaw.evidence() instanceof Evidence.Core;
		return core || flaw.story().isEmpty() ? flaw.message()
				: flaw.message() + (flaw.evidence() instanceof Evidence.Region ? "\nWhenever: " : "\nFor example: ")
						+ String.join("; ", flaw.story()) + ".";
	}

	private JsonObject suppression(Acceptance accepted) {
		JsonObject suppression = new JsonObject();
		suppression.addProperty("kind", "inSource");
		suppression.addProperty("status", "accepted");
		suppression.addProperty("justification", accepted.reason() + accepted.author().map(by -> " – " + by).orElse("")
				+ accepted.date().map(on -> ", " + on).orElse(""));
		if (!accepted.span().file().isEmpty()) {
			suppression.add("location", location(accepted.span()));
		}
		return suppression;
	}

	private JsonObject result(String rule, String text, Span span) {
		JsonObject result = new JsonObject();
		result.addProperty("ruleId", rule);
		result.addProperty("ruleIndex", ruleIndex.get(rule));
		result.add("message", message(text));
		if (!span.file().isEmpty()) {
			result.add("locations", list(location(span)));
		}
		return result;
	}

	private JsonObject location(Span span) {
		JsonObject artifact = new JsonObject();
		artifact.addProperty("uri", uri(isAbsolute() ? span.file() : project.shown(span.file())));
		if (isAbsolute()) {
			artifact.addProperty("uriBaseId", PROJECT_BASE);
		}
		JsonObject region = new JsonObject();
		region.addProperty("startLine", span.line());
		region.addProperty("startColumn", span.column());
		region.addProperty("endLine", span.endLine());
		region.addProperty("endColumn", span.endColumn());
		region.addProperty("charOffset", span.offset());
		region.addProperty("charLength", span.length());
		JsonObject physical = object("artifactLocation", artifact);
		physical.add("region", region);
		return object("physicalLocation", physical);
	}

	/** A path of the machine tells others nothing, so that such places are told relative to the project. */
	private boolean isAbsolute() {
		return Path.of(project.prefix()).isAbsolute();
	}

	/** Returns the path as a relative reference of RFC 3986. */
	private static String uri(String path) {
		StringBuilder uri = new StringBuilder();
		for (byte b : path.getBytes(java.nio.charset.StandardCharsets.UTF_8)) {
			boolean plain = b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9' || "-._~/".indexOf(b) >= 0;
			uri.append(plain ? String.valueOf((char) b) : String.format(java.util.Locale.ROOT, "%%%02X", b));
		}
		return uri.toString();
	}

	private static JsonObject message(String text) {
		return object("text", text);
	}

	private static JsonObject object(String name, String value) {
		JsonObject object = new JsonObject();
		object.addProperty(name, value);
		return object;
	}

	private static JsonObject object(String name, JsonElement value) {
		JsonObject object = new JsonObject();
		object.add(name, value);
		return object;
	}

	private static JsonArray list(JsonElement value) {
		JsonArray list = new JsonArray();
		list.add(value);
		return list;
	}
}
