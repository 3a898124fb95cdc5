package org.baywright.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

import org.baywright.model.Severity;
import org.baywright.model.Span;

/** One line for each problem and flaw, for logs: {@code file:line:column: severity: message [kind]}. */
public final class LineReport {

	private LineReport() {
	}

	private record Line(Span span, Severity severity, String id, String message) {
	}

	/** Returns the lines of all projects by place; accepted flaws are left out unless they are asked for. */
	public static String of(List<Project> projects, boolean accepted) {
		StringBuilder out = new StringBuilder();
		for (Project project : projects) {
			List<Line> lines = new ArrayList<>();
			project.problems().forEach(
					problem -> lines.add(new Line(problem.span(), problem.severity(), problem.id(), problem.message())));
			project.report().flaws().stream().filter(flaw -> accepted || flaw.accepted().isEmpty()).forEach(
					flaw -> lines.add(new Line(flaw.span(), flaw.severity(), flaw.check(), flaw.message())));
			lines.sort(Comparator.comparing(Line::span).thenComparing(Line::severity).thenComparing(Line::id)
					.thenComparing(Line::message));
			for (Line line : lines) {
				String place = line.span().file().isEmpty() ? project.rules().name() : project.shown(line.span().toString());
				String text = place + ": " + line.severity().name().toLowerCase(Locale.ROOT) + ": "
						+ line.message().replaceAll("\\s+", " ") + " [" + line.id() + "]";
				out.append(Style.safe(text)).append('\n');
			}
		}
		return out.toString();
	}
}
