package org.baywright.cli.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.CaseResult;
import org.baywright.model.Case;
import org.baywright.model.Problem;
import org.baywright.model.Severity;

/**
 * The finished jobs as JUnit XML, which build servers read: one test case for each job, and one for each error of the
 * text, since what it leaves out cannot fail. A single project is one test
 * suite, as the schema of surefire-test-report.xsd wants it; several are wrapped in {@code testsuites}, as all readers
 * know it.
 */
public final class JunitReport {

	private final StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");

	private JunitReport() {
	}

	/** Returns the report. It holds no times: two runs on the same rules give the same text. */
	public static String of(List<Project> projects) {
		JunitReport report = new JunitReport();
		if (projects.size() == 1) {
			report.suite(projects.get(0), "");
		} else {
			report.out.append("<testsuites>\n");
			projects.forEach(project -> report.suite(project, "  "));
			report.out.append("</testsuites>\n");
		}
		return report.out.toString();
	}

	private void suite(Project project, String indent) {
		Map<Case, CaseResult> results = new HashMap<>();
		project.report().cases().forEach(result -> results.put(result.job(), result));
		List<Case> jobs = project.rules().cases();
		long failed = project.report().cases().stream().filter(result -> !result.passed()).count();
		List<Problem> errors = project.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		out.append(indent).append("<testsuite name=\"").append(escaped(project.rules().name())).append("\" tests=\"")
				.append(jobs.size() + errors.size()).append("\" errors=\"").append(errors.size()).append("\" skipped=\"").append(jobs.size() - results.size())
				.append("\" failures=\"").append(failed).append("\">\n");
		for (Case job : jobs) {
			testCase(project, job, results.get(job), indent + "  ");
		}
		errors.forEach(error -> testCase(project, error, indent + "  "));
		out.append(indent).append("</testsuite>\n");
	}

	private void testCase(Project project, Problem error, String indent) {
		out.append(indent).append("<testcase name=\"").append(error.span().line()).append(':').append(error.span().column())
				.append("\" classname=\"").append(escaped(project.shown(error.span().file())))
				.append("\" time=\"0\"><error type=\"").append(escaped(error.id())).append("\" message=\"").append(escaped(error.message()))
				.append("\">").append(escaped(project.shown(error.span().toString()) + "\n" + error.advice()))
				.append("</error></testcase>\n");
	}

	private void testCase(Project project, Case job, CaseResult result, String indent) {
		out.append(indent).append("<testcase name=\"").append(escaped(job.name())).append("\" classname=\"")
				.append(escaped(project.shown(job.span().file()))).append("\" time=\"0\"");
		if (result == null) {
			out.append("><skipped message=\"The job's family is not one that vehicles belong to.\"/></testcase>\n");
		} else if (result.passed()) {
			out.append("/>\n");
		} else {
			out.append("><failure type=\"failing-job\" message=\"").append(escaped(result.message())).append("\">")
					.append(escaped(project.shown(job.span().toString()) + "\nRules that applied: "
							+ (result.fired().isEmpty() ? "none" : String.join(", ", result.fired()))))
					.append("</failure></testcase>\n");
		}
	}

	/** Escapes for XML 1.0, which cannot hold most control characters at all. */
	private static String escaped(String text) {
		StringBuilder escaped = new StringBuilder();
		text.codePoints().forEach(c -> {
			switch (c) {
			case '&' -> escaped.append("&amp;");
			case '<' -> escaped.append("&lt;");
			case '>' -> escaped.append("&gt;");
			case '"' -> escaped.append("&quot;");
			case '\n' -> escaped.append("&#10;");
			case '\t' -> escaped.append("&#9;");
			default -> escaped.appendCodePoint(isAllowed(c) ? c : 0xFFFD);
			}
		});
		return escaped.toString();
	}

	private static boolean isAllowed(int c) {
		return c >= ' ' && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000;
	}
}
