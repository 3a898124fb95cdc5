package org.baywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Callable;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Project;
import org.baywright.cli.report.Style;
import org.baywright.cli.report.TextReport;
import org.baywright.cli.work.Packing;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Projects;
import org.baywright.model.Severity;
import org.baywright.pack.PackRefused;
import org.baywright.pack.PackWriter;
import org.baywright.pack.manifest.PackException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright pack}. */
@Command(name = "pack", sortOptions = false, //
		header = "Check a rule project and write its rule pack.", //
		description = { "", "A rule pack is one file for other tools to load. It holds all rules, what was checked and what"
				+ " stands, and a sheet of the rules to read and print. The same rules always give the same bytes.", "",
				"No pack is written while an error stands, nor while the project's sign-off is not met, unless you ask for a"
						+ " draft. Warnings are carried in the pack, with the author's reason if"
						+ " they were accepted." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the pack was written", //
				"1:no pack was written, since an error stands or the sign-off is not met", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written" }, //
		footerHeading = "%nExamples:%n", footer = { "  baywright pack van", //
				"  baywright pack van --output packs/van.baypack --sheet van.html", //
				"  baywright pack van --quiet --output /dev/stdout | sha256sum" })
final class PackCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "PROJECT", arity = "0..1", defaultValue = ".", description = "Folder of the rule project. Default: this folder.")
	private String given;

	@Option(names = { "-o", "--output" }, paramLabel = "FILE", description = {
			"The pack to write. Default: the project's name with the ending .baypack, in this folder." })
	private Optional<String> output = Optional.empty();

	@Option(names = "--sheet", paramLabel = "FILE", description = "Write the sheet of the rules to this file (HTML) too.")
	private Optional<String> sheet = Optional.empty();

	@Option(names = "--draft", description = "Write the pack although the project's sign-off is not met; the pack says so.")
	private boolean draft;

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	PackCommand(Session session) {
		this.session = session;
	}

	private Project check(Progress shown) throws IOException {
		try {
			return Projects.check(session.resolve(given), given, shown);
		} finally {
			shown.end();
		}
	}

	@Override
	public Integer call() throws IOException, PackException {
		Optional<Target> pack = Target.of(session, output);
		Optional<Target> page = Target.of(session, sheet);
		Progress shown = session.progress(progress);
		Project project = check(shown);
		Target target = pack.isPresent() ? pack.get() : new Target(session, project.rules().name() + ".baypack");
		if (page.isPresent() && target.isSame(page.get())) {
			throw new CommandException(ExitCode.USAGE, "The pack and the sheet cannot both be written to " + target.given()
					+ ". Give the sheet a file of its own.");
		}
		if (target.isAmong(project.beneath().keySet())) {
			throw new CommandException(ExitCode.USAGE, "The project builds on " + target.given() + ", so its own pack cannot be written there. "
					+ "Name another file behind --output.");
		}
		Output out = target.tell() == session.err() ? session.err() : page.map(Target::tell).orElse(session.out());
		TextReport report = new TextReport(out, session.style(), false);
		try {
			PackWriter.Made made = Packing.make(project, draft);
			target.write(made.bytes());
			if (page.isPresent()) {
				writeSheet(page.get(), made, target);
			}
			if (!session.quiet()) {
				report.writeTotals(project);
			}
			boolean isDraft = made.pack().manifest().isDraft();
			session.say(out, Style.safe("Wrote " + target.given() + (isDraft ? ", a draft, as the sign-off is not met" : "") + ", fingerprint "
					+ made.pack().manifest().fingerprint()));
			return ExitCode.FINE;
		} catch (PackRefused refused) {
			report.writeErrors(project, refused.problems(), refused.flaws());
			if (refused.isForSignOff()) {
				out.println(session.style().strong(refused.getMessage()) + " With --draft a draft is written all the same.");
				return ExitCode.FLAWS;
			}
			if (project.count(Severity.ERROR) > 0) { // all of them may be told in what the project builds on
				report.writeTotals(project);
			}
			out.println(session.style().strong(refused.getMessage()));
			return ExitCode.FLAWS;
		}
	}

	private void writeSheet(Target page, PackWriter.Made made, Target pack) throws IOException {
		try {
			page.write(made.pack().sheet().getBytes(StandardCharsets.UTF_8));
		} catch (IOException e) {
			session.err().println(Style.safe("The pack " + pack.given() + " was written, but not its sheet."));
			throw e;
		}
	}
}
