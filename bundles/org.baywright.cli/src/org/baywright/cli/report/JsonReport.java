package org.baywright.cli.report;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Place;
import org.baywright.analysis.RuleCheck;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
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

	/**
	 * Returns kinds of flaws and kinds of problems of the text.
	 *
	 * @param page returns the help on a kind
	 */
	public static String kinds(Collection<RuleCheck> kinds, Collection<ProblemKind> problems, Function<String, String> page) {
		JsonObject all = versioned();
		all.add("kinds", list(kinds, kind -> kind(kind.id(), kind.severity(), kind.summary(), page)));
		all.add("problems", list(problems, kind -> kind(kind.id(), kind.severity(), kind.title(), page)));
		return text(all);
	}

	private static JsonObject kind(String id, Severity severity, String summary, Function<String, String> page) {
		JsonObject one = new JsonObject();
		one.addProperty("id", id);
		one.addProperty("severity", word(severity));
		one.addProperty("summary", summary);
		one.addProperty("page", page.apply(id));
		return one;
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
		one.add("flaws", list(project.report().flaws(), flaw -> flaw(project, flaw)));
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

	private static JsonObject flaw(Project project, Flaw flaw) {
		JsonObject one = new JsonObject();
		one.addProperty("id", flaw.check());
		one.addProperty("severity", word(flaw.severity()));
		one.addProperty("key", flaw.acceptanceKey());
		one.add("at", place(project, flaw.span()));
		one.addProperty("message", flaw.message());
		one.add("related", list(flaw.related(), place -> noted(project, place)));
		if (flaw.evidence() instanceof Evidence.Core core) {
			one.add("cause", list(core.lines(), place -> noted(project, place)));
		}
		JsonArray story = new JsonArray();
		flaw.story().forEach(story::add);
		one.add("story", story);
		if (flaw.breach()) {
			one.addProperty("breach", true);
		}
		flaw.accepted().ifPresent(accepted -> {
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

	private static <T> JsonArray list(Collection<T> values, Function<T, JsonElement> form) {
		JsonArray array = new JsonArray();
		values.forEach(value -> array.add(form.apply(value)));
		return array;
	}

	private static String word(Severity severity) {
		return severity.name().toLowerCase(Locale.ROOT);
	}
}
