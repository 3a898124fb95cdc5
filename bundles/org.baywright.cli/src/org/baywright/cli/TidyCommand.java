package org.baywright.cli;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;

import org.baywright.analysis.Report;
import org.baywright.cli.report.Difference;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Project;
import org.baywright.cli.report.Style;
import org.baywright.cli.report.TextReport;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Tidying;
import org.baywright.model.RuleBase;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright tidy}. */
@Command(name = "tidy", sortOptions = false, //
		header = "Lay out rule files well.", //
		description = { "", "Changes nothing but space between words: indentation, columns, empty lines. Files with a syntax"
				+ " error are left as they are and told." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:all files are well laid out now", //
				"1:with --check or --diff, a file is not well laid out; or a file has an error that must be put right first", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written" }, //
		footerHeading = "%nExamples:%n", footer = { "  baywright tidy van", //
				"  baywright tidy --check --quiet van    only the names of files that are not well laid out", //
				"  baywright tidy --diff van | less" })
final class TidyCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "PATH", defaultValue = ".", description = {
			"Rule files, or folders with rule files. Default: this folder." })
	private List<String> given = List.of();

	@Option(names = "--check", description = "Change nothing; only list the files that are not well laid out.")
	private boolean check;

	@Option(names = "--diff", description = "Change nothing; show what would be changed, as lines that go (-) and come (+).")
	private boolean diff;

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	TidyCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException {
		int files = 0;
		int changed = 0;
		int refused = 0;
		for (String path : given) {
			Progress shown = session.progress(progress);
			Tidying tidying;
			try {
				tidying = Tidying.of(session.resolve(path), path, !check && !diff, shown);
			} finally {
				shown.end();
			}
			tell(tidying);
			files += tidying.files();
			changed += tidying.changed().size();
			refused += tidying.refused().size();
		}
		String left = refused > 0 ? ", " + refused + " left as they were; see above." : ".";
		session.say(session.out(), TextReport.number(files, "file") + ": " + (changed == 0 && refused == 0 ? "well laid out"
				: changed + (check || diff ? " not well laid out" : " laid out anew")) + left);
		return refused > 0 || (check || diff) && changed > 0 ? ExitCode.FLAWS : ExitCode.FINE;
	}

	private void tell(Tidying tidying) {
		Output out = session.out();
		tidying.changed().forEach((file, text) -> {
			String shown = tidying.prefix() + file;
			if (diff) {
				Difference.of(shown, tidying.sources().get(file), text).forEach(line -> out.println(Style.safe(line)));
			} else if (check || !session.quiet()) {
				out.println(Style.safe(shown));
			}
		});
		Project texts = new Project(Optional.empty(), tidying.prefix(), false, new RuleBase.Builder("").build(), List.of(), Map.copyOf(tidying.sources()),
				List.of(), new Report(List.of(), List.of(), List.of(), 0, 0), new TreeMap<>(), List.of());
		TextReport report = new TextReport(out, session.style(), false);
		tidying.refused().forEach(problem -> {
			report.problem(texts, problem);
			out.println();
		});
	}
}
