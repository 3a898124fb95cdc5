package org.baywright.cli;

import java.util.stream.Stream;
import java.util.Map;
import java.util.Locale;
import java.util.LinkedHashMap;
import java.util.Iterator;
import java.nio.file.Path;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;

import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.cli.report.JsonReport;
import org.baywright.cli.report.JunitReport;
import org.baywright.cli.report.LineReport;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Project;
import org.baywright.cli.report.SarifReport;
import org.baywright.cli.report.Style;
import org.baywright.cli.report.TextReport;
import org.baywright.cli.work.Fixing;
import org.baywright.cli.work.Guess;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Projects;
import org.baywright.cli.work.Watch;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright check}. */
@Command(name = "check", sortOptions = false, //
		header = "Check rule projects and say what is wrong, why, and what to do.", //
		description = { "", "Reads rule projects, makes all checks, and tells each flaw with the lines it is about, a"
				+ " situation that shows it or the lines that cause it, and what to do. Runs the finished jobs of each project"
				+ " through its rules.", "",
				"A warning that may stand is accepted by a line in the rules, which is told with it. An accepted warning"
						+ " comes back when the meaning of what it is about changes." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:nothing was found that counts", //
				"1:something was found at or above --fail-on, or with --sign-off a sign-off is not met", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written", //
				"4:nothing was found that counts, but not every question was decided" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright check                                  the project in this folder", //
				"  baywright check van tractor --fail-on warning    two projects, and no warning may stand", //
				"  baywright check van --sign-off                   all must be agreed with as the project asks", //
				"  baywright check --only gap --only band-gap       only two kinds of flaws", //
				"  baywright check --format line --quiet van        one line for each flaw, for a log", //
				"  baywright check --format json van | jq .projects[0].counts", //
				"  baywright check --fix van                        first put right typing errors", //
				"  baywright check --watch van                      check after each change", //
				"  baywright check --format sarif --output van.sarif van" })
final class CheckCommand implements Callable<Integer> {

	/** Forms in which flaws are told. */
	enum Format {
		TEXT, LINE, JSON, SARIF, JUNIT;

		@Override
		public String toString() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	/** What makes a check fail. */
	enum FailOn {
		ERROR, WARNING;

		@Override
		public String toString() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	/** What --only takes. */
	static final class Only implements Iterable<String> {
		@Override
		public Iterator<String> iterator() {
			return Stream.concat(Stream.of(Project.TEXT), Checks.ids().stream()).iterator();
		}
	}

	private final Session session;
	/** What the projects build on, as it was when it was read last. */
	private final SortedMap<Path, String> beneath = new TreeMap<>();

	@Parameters(paramLabel = "PROJECT", defaultValue = ".", description = {
			"Folder of a rule project: all *.bay files in it, at any depth, but for files and folders with a dot in front and folders named target. A single *.bay file is a project of its own."
					+ " Default: this folder." })
	private List<String> given = List.of();

	@Option(names = { "-f", "--format" }, paramLabel = "FORMAT", defaultValue = "text", description = {
			"text for people, line (one line for each flaw) for logs, json for programs, sarif (SARIF 2.1.0) for editors and build servers, junit (JUnit XML) for the finished jobs"
					+ " and the errors of the text. Default: text." })
	private Format format = Format.TEXT;

	@Option(names = { "-o", "--output" }, paramLabel = "FILE", description = "Write to this file.")
	private Optional<String> output = Optional.empty();

	@Option(names = "--only", paramLabel = "ID", completionCandidates = Only.class, description = {
			"Show and count only this kind of flaw; 'baywright explain' lists them. The word text stands for what is wrong"
					+ " in the text of the files; its errors are told in any case. May be given several times." })
	private Set<String> only = Set.of();

	@Option(names = "--fail-on", paramLabel = "error|warning", defaultValue = "error", description = {
			"What makes the command fail. Accepted warnings never do. Default: error." })
	private FailOn failOn = FailOn.ERROR;

	@Option(names = "--sign-off", description = {
			"Fail also while a project's sign-off is not met. Without it breaches are warnings like others, which nobody can accept." })
	private boolean signOff;

	@Option(names = "--accepted", description = "Show accepted flaws too, with the author's reason.")
	private boolean accepted;

	@Option(names = "--fix", description = {
			"First put right the typing errors for which there is one answer: brackets, quotes, a name that is misspelt and right elsewhere. Each is"
					+ " written only if it helps and brings nothing new. What changes what a rule says is yours to decide; it"
					+ " is told and left." })
	private boolean fix;

	@Option(names = "--watch", description = "Check again whenever a rule file changes, until Ctrl+C.")
	private boolean watch;

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	CheckCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException, InterruptedException {
		requireKnown();
		Map<Path, String> once = new LinkedHashMap<>();
		for (String path : given) {
			once.putIfAbsent(session.resolve(path).toAbsolutePath().normalize(), path);
		}
		given = List.copyOf(once.values());
		if (watch) {
			return watch();
		}
		return once();
	}

	private int once() throws IOException {
		beneath.clear();
		Optional<Target> target = Target.of(session, output);
		Output tell = target.map(Target::tell).orElse(session.out());
		if (fix) {
			fix();
		}
		List<Project> projects = new ArrayList<>();
		for (String path : given) {
			projects.add(check(path));
			beneath.putAll(projects.get(projects.size() - 1).beneath());
		}
		if (!only.isEmpty()) {
			projects.replaceAll(project -> project.only(only));
		}
		if (target.isPresent()) {
			target.get().write(report(projects).getBytes(StandardCharsets.UTF_8));
			totals(projects, tell);
		} else if (format == Format.TEXT) {
			text(projects, new TextReport(session.out(), session.style(), accepted));
			adviseOnSingleFiles(projects);
		} else {
			session.out().print(report(projects));
		}
		return signOff && projects.stream().anyMatch(project -> project.breaches() > 0) ? ExitCode.FLAWS : exitCode(projects, failOn);
	}

	/** Checks again and again; ends only by being cancelled, or when nobody reads what is told. */
	private int watch() throws IOException, InterruptedException {
		while (true) {
			Watch before = Watch.of(given.stream().map(session::resolve).toList());
			try {
				once();
			} catch (IOException e) {
				// a folder that is just being replaced comes back
				session.err().println(Style.safe(String.valueOf(e.getMessage())));
			}
			session.out().flush();
			session.say(session.err(), "Waiting for a change; Ctrl+C ends.");
			session.err().flush();
			if (session.out().failure().isPresent()) {
				return ExitCode.FILES;
			}
			before.awaitChange(beneath, session.progress(false));
		}
	}

	private void fix() throws IOException {
		for (String path : given) {
			Progress shown = session.progress(progress);
			Fixing fixing;
			try {
				fixing = Fixing.of(session.resolve(path), path, only, shown);
			} finally {
				shown.end();
			}
			// what is told of fixes must not stand in a report for programs
			Output tell = format == Format.TEXT && output.isEmpty() ? session.out() : session.err();
			fixing.told().forEach(line -> tell.println(Style.safe(line)));
		}
	}

	private Project check(String path) throws IOException {
		Progress shown = session.progress(progress);
		try {
			return Projects.check(session.resolve(path), path, shown);
		} finally {
			shown.end();
		}
	}

	private String report(List<Project> projects) {
		return switch (format) {
		case SARIF -> SarifReport.of(projects, id -> HelpPages.page(id).orElse(""));
		case JSON -> JsonReport.check(projects);
		case LINE -> LineReport.of(projects, accepted);
		case JUNIT -> JunitReport.of(projects);
		case TEXT -> {
			StringWriter text = new StringWriter();
			Output out = new Output(text);
			text(projects, new TextReport(out, Style.PLAIN, accepted));
			out.flush();
			yield text.toString();
		}
		};
	}

	private void text(List<Project> projects, TextReport report) {
		for (Project project : projects) {
			report.write(project);
			if (!session.quiet()) {
				report.writeTotals(project);
			}
		}
	}

	private void totals(List<Project> projects, Output tell) {
		TextReport report = new TextReport(tell, session.style(), accepted);
		projects.forEach(project -> session.say(tell, report.totals(project)));
	}

	private void requireKnown() {
		Set<String> unknown = new TreeSet<>(only);
		unknown.removeAll(Checks.ids());
		unknown.remove(Project.TEXT);
		if (!unknown.isEmpty()) {
			List<String> known = new ArrayList<>(List.of(Project.TEXT));
			known.addAll(Checks.ids());
			throw new CommandException(ExitCode.USAGE, "There is no kind of flaw " + String.join(", ", unknown) + ". "
					+ Guess.advice(unknown.iterator().next(), known, "There are: " + String.join(", ", known) + "."));
		}
	}

	/** Who checks one file of a project alone sees names that its other files declare as unknown. */
	private void adviseOnSingleFiles(List<Project> projects) {
		for (int i = 0; i < projects.size(); i++) {
			boolean unknown = projects.get(i).problems().stream().anyMatch(problem -> problem.kind() == ProblemKind.UNKNOWN_NAME);
			if (unknown && Files.isRegularFile(session.resolve(given.get(i)))) {
				session.say(session.out(), "The file " + Style.safe(given.get(i))
						+ " was checked by itself. Name its folder to check it together with the files beside it.");
			}
		}
	}

	static int exitCode(List<Project> projects, FailOn failOn) {
		long counting = 0;
		long undecided = 0;
		for (Project project : projects) {
			counting += project.count(Severity.ERROR) + (failOn == FailOn.WARNING ? project.count(Severity.WARNING) : 0);
			undecided += project.undecided();
		}
		return counting > 0 ? ExitCode.FLAWS : undecided > 0 ? ExitCode.UNDECIDED : ExitCode.FINE;
	}
}
