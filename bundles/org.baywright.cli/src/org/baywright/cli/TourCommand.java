package org.baywright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Project;
import org.baywright.cli.report.Style;
import org.baywright.cli.report.TextReport;
import org.baywright.cli.work.Packing;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Projects;
import org.baywright.model.Severity;
import org.baywright.pack.Pack;
import org.baywright.pack.PackRefused;
import org.baywright.pack.manifest.PackException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright tour}. */
@Command(name = "tour", sortOptions = false, //
		header = "Check the example projects one after the other and write their packs.", //
		description = { "", "Shows in a minute what Baywright does. The vehicles, makers and jobs in the examples are invented." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:all packs were written", "1:an error stands in an example",
				"2:the command was used in a wrong way", "3:a file could not be read or written" }, //
		footerHeading = "%nExamples:%n", footer = "  baywright tour my-packs")
final class TourCommand implements Callable<Integer> {

	/** The examples of what is wrong; each is shown by a check of its own. */
	private static final String FLAWED = "flawed";

	private final Session session;

	@Parameters(paramLabel = "FOLDER", arity = "0..1", defaultValue = "packs", description = {
			"Where to write the packs and their sheets. Default: packs." })
	private String target;

	@Option(names = "--examples", paramLabel = "FOLDER", description = "Take the examples from this folder.")
	private Optional<String> examples = Optional.empty();

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	TourCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException, PackException {
		Path folder = examples.map(session::resolve).orElse(session.home().resolve("rules-examples"));
		List<Path> projects = projects(folder);
		List<String[]> table = new ArrayList<>();
		table.add(new String[] { "Project", "Rules", "Tests", "Faults", "Jobs", "Warnings", "Accepted", "Pack" });
		int code = ExitCode.FINE;
		for (int i = 0; i < projects.size(); i++) {
			session.out().println(session.style().strong((i + 1) + " of " + projects.size() + ": "
					+ Style.safe(projects.get(i).getFileName().toString())));
			Optional<String[]> row = visit(projects.get(i));
			row.ifPresent(table::add);
			code = row.isPresent() ? code : ExitCode.FLAWS;
			session.out().println();
			session.out().flush();
		}
		print(table);
		if (code == ExitCode.FINE) {
			session.out().println();
			session.out().println("Read the rules: open a file *.html in the folder " + target + " with any browser.");
			session.out().println("See what Baywright finds: check one of the files in "
					+ shown(folder).resolve(FLAWED) + " with 'baywright check FILE'.");
		}
		return code;
	}

	private List<Path> projects(Path folder) throws IOException {
		if (!Files.isDirectory(folder)) {
			throw new IOException("There are no examples in " + shown(folder)
					+ ". Name the folder that holds them with --examples.");
		}
		try (Stream<Path> all = Files.list(folder)) {
			List<Path> projects = all.filter(Files::isDirectory)
					.filter(path -> !path.getFileName().toString().equals(FLAWED) && !path.getFileName().toString().startsWith("."))
					.sorted().toList();
			if (projects.isEmpty()) {
				throw new IOException("There are no example projects in " + shown(folder) + ".");
			}
			return projects;
		}
	}

	/** Returns the path as short as it can be told. */
	private Path shown(Path path) {
		Path whole = path.toAbsolutePath().normalize();
		return whole.startsWith(session.folder()) ? session.folder().relativize(whole) : whole;
	}

	private Optional<String[]> visit(Path path) throws IOException, PackException {
		Progress shown = session.progress(progress);
		Project project;
		try {
			project = Projects.check(path, shown(path).toString(), shown);
		} finally {
			shown.end();
		}
		TextReport report = new TextReport(session.out(), session.style(), false);
		report.write(project);
		report.writeTotals(project);
		String name = project.rules().name();
		Path folder = session.resolve(target);
		try {
			Pack pack = Packing.write(project, folder.resolve(name + ".baypack"), folder.resolve(name + ".html"));
			session.out().println(Style.safe("Wrote " + Path.of(target).resolve(name + ".baypack")));
			return Optional.of(row(project, pack));
		} catch (PackRefused refused) {
			session.out().println(session.style().strong(refused.getMessage()));
			return Optional.empty();
		}
	}

	private static String[] row(Project project, Pack pack) {
		return new String[] { project.rules().name(), String.valueOf(pack.manifest().count("rules")),
				String.valueOf(pack.manifest().count("tests")), String.valueOf(pack.manifest().count("faults")),
				pack.manifest().cases() + "/" + pack.manifest().count("jobs"),
				String.valueOf(project.count(Severity.WARNING)), String.valueOf(project.accepted()),
				pack.manifest().fingerprint().substring(0, 12) };
	}

	private void print(List<String[]> table) {
		Output out = session.out();
		int columns = table.get(0).length;
		for (String[] row : table) {
			StringBuilder line = new StringBuilder();
			for (int c = 0; c < columns; c++) {
				int column = c;
				int width = table.stream().mapToInt(cells -> cells[column].length()).max().orElse(0);
				boolean left = c == 0 || c == columns - 1;
				line.append(String.format(Locale.ROOT, left ? "%-" + width + "s" : "%" + width + "s", row[c]))
						.append(c < columns - 1 ? "  " : "");
			}
			out.println(row == table.get(0) ? session.style().strong(line.toString().stripTrailing()) : line.toString().stripTrailing());
		}
	}
}
