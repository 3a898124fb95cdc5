package org.baywright.cli.work;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Severity;

/** What is wrong with the texts of a project and was not before. */
public final class NewErrors {

	private NewErrors() {
	}

	/**
	 * Returns the errors that are there after a change and were not before, each as a line with its place.
	 *
	 * @param before the texts before, by path
	 * @param after the texts then
	 */
	public static List<String> of(Map<String, String> before, Map<String, String> after) {
		Map<String, String> errors = errors(after);
		errors.keySet().removeAll(errors(before).keySet());
		return List.copyOf(errors.values());
	}

	/** What a problem or a flaw is about names it, since places move. */
	private static Map<String, String> errors(Map<String, String> texts) {
		Snapshot snapshot = Projects.ofTexts(texts);
		Map<String, String> errors = new LinkedHashMap<>();
		snapshot.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).forEach(problem -> errors
				.put(problem.id() + problem.message(), problem.span().file() + ":" + problem.span().line() + ": " + problem.message() + " " + problem.advice()));
		List<Flaw> flaws = new ArrayList<>(new Analysis().check(snapshot.rules(), Listener.NONE).flaws());
		flaws.stream().filter(flaw -> flaw.severity() == Severity.ERROR && flaw.accepted().isEmpty())
				.forEach(flaw -> errors.put(flaw.id(), flaw.span().file() + ":" + flaw.span().line() + ": " + flaw.message()));
		return errors;
	}
}
