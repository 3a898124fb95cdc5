package org.baywright.cli.report;

import java.util.Collection;
import java.util.List;
import java.util.Locale;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Finding;
import org.baywright.analysis.Place;
import org.baywright.analysis.RuleCheck;
import org.baywright.cli.work.Project;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;

/**
 * What is told, as JSON for programs: one object with {@code "version": 1}. A property is never taken out or given
 * another meaning in the same version; new ones may come.
 */
public final class JsonReport {

	private static final Gson PRETTY = new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();
	private static final int VERSION = 1;

	private JsonReport() {
	}

	/** Returns what was found in projects. Places count lines and columns from 1, the end is behind the last character. */
	public static String check(List<Project> projects) {
		JsonObject all = versioned();
		all.add("projects", list(projects, JsonReport::project));
		return text(all);
	}

	/** Returns kinds of findings. */
	public static String kinds(Collection<RuleCheck> kinds, java.util.function.Function<String, String> page) {
		JsonObject all = versioned();
		all.add("kinds", list(kinds, kind -> {
			JsonObject one = new JsonObject();
			one.addProperty("id", kind.id());
			one.addProperty("severity", word(kind.severity()));
			one.addProperty("summary", kind.summary());
			one.addProperty("page", page.apply(kind.id()));
			return one;
		}));
		return text(all);
	}

	/** Returns a new report without content. */
	public static JsonObject versioned() {
		JsonObject object = new JsonObject();
		object.addProperty("version", VERSION);
		return object;
	}

	/** Returns an object as text, laid out to be read. */
	public static String text(JsonObject object) {
		return PRETTY.toJson(object) + "\n";
	}

	private static JsonObject project(Project project) {
		JsonObject one = new JsonObject();
		one.addProperty("name", project.rules().name());
		JsonObject counts = new JsonObject();
		counts.addProperty("errors", project.count(Severity.ERROR));
		counts.addProperty("warnings", project.count(Severity.WARNING));
		counts.addProperty("notes", project.count(Severity.NOTE));
		counts.addProperty("undecided", project.undecided());
		counts.addProperty("accepted", project.accepted());
		counts.addProperty("rules", project.rules().rules().size());
		one.add("counts", counts);
		one.add("problems", list(project.problems(), problem -> problem(project, problem)));
		one.add("findings", list(project.report().findings(), finding -> finding(project, finding)));
		one.add("jobs", list(project.report().cases(), result -> {
			JsonObject job = new JsonObject();
			job.addProperty("name", result.job().name());
			job.addProperty("passed", result.passed());
			job.addProperty("message", result.message());
			return job;
		}));
		JsonArray dropped = new JsonArray();
		project.dropped().forEach(dropped::add);
		one.add("leftOut", dropped);
		return one;
	}

	private static JsonObject problem(Project project, Problem problem) {
		JsonObject one = new JsonObject();
		one.addProperty("id", problem.id());
		one.addProperty("severity", word(problem.severity()));
		one.add("at", place(project, problem.span()));
		one.addProperty("message", problem.message());
		one.addProperty("advice", problem.advice());
		return one;
	}

	private static JsonObject finding(Project project, Finding finding) {
		JsonObject one = new JsonObject();
		one.addProperty("id", finding.check());
		one.addProperty("severity", word(finding.severity()));
		one.addProperty("key", finding.acceptanceKey());
		one.add("at", place(project, finding.span()));
		one.addProperty("message", finding.message());
		one.add("related", list(finding.related(), place -> noted(project, place)));
		if (finding.evidence() instanceof Evidence.Core core) {
			one.add("cause", list(core.lines(), place -> noted(project, place)));
		}
		JsonArray story = new JsonArray();
		finding.story().forEach(story::add);
		one.add("story", story);
		finding.accepted().ifPresent(accepted -> {
			JsonObject by = new JsonObject();
			by.addProperty("reason", accepted.reason());
			accepted.author().ifPresent(author -> by.addProperty("by", author));
			accepted.date().ifPresent(date -> by.addProperty("on", date.toString()));
			one.add("accepted", by);
		});
		return one;
	}

	private static JsonObject noted(Project project, Place place) {
		JsonObject one = new JsonObject();
		one.add("at", place(project, place.span()));
		one.addProperty("note", place.note());
		return one;
	}

	private static JsonObject place(Project project, Span span) {
		JsonObject one = new JsonObject();
		one.addProperty("file", span.file().isEmpty() ? "" : project.shown(span.file()));
		one.addProperty("line", span.line());
		one.addProperty("column", span.column());
		one.addProperty("endLine", span.endLine());
		one.addProperty("endColumn", span.endColumn());
		return one;
	}

	private static <T> JsonArray list(Collection<T> values, java.util.function.Function<T, JsonElement> form) {
		JsonArray array = new JsonArray();
		values.forEach(value -> array.add(form.apply(value)));
		return array;
	}

	private static String word(Severity severity) {
		return severity.name().toLowerCase(Locale.ROOT);
	}
}
