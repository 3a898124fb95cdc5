package org.baywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;

import org.baywright.analysis.difference.Comparison;
import org.baywright.analysis.difference.Difference;
import org.baywright.cli.report.CompareReport;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Read;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.PackReader;
import org.baywright.pack.manifest.PackException;
import org.baywright.presenter.Say;
import org.baywright.presenter.review.Compared;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright compare}. */
@Command(name = "compare", sortOptions = false, //
		header = "Tell what a change of the rules does to vehicles.", //
		description = { "", "Compares two states of a project: in which situations a job ends otherwise, what can come out now and could not, which finished jobs and"
				+ " findings changed; then which elements were edited. All situations are compared, by proof.", "",
				"Names, places, layout, comments and the spelling of units change nothing for a vehicle and are told as such." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:no change in meaning", //
				"1:the meaning changed: vehicles end otherwise, or what is done at them was edited", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written, or a text has an error", //
				"4:nothing was found to change, but not every question was decided" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright compare light-van-before light-van        two folders", //
				"  baywright compare van-1.baypack van-2.baypack       two rule packs", //
				"  baywright compare --format html --output review.html before after" })
final class CompareCommand implements Callable<Integer> {

	/** Forms in which a difference is told. */
	enum Format {
		TEXT, JSON, HTML;

		@Override
		public String toString() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	/** So many entries of a list are told to people, unless they ask for more. */
	private static final int MOST = 12;

	private final Session session;

	@Parameters(index = "0", paramLabel = "BEFORE", description = "The state before: the folder of a rule project, a rule file (*.bay) or a rule pack (*.baypack).")
	private String before;

	@Parameters(index = "1", paramLabel = "NOW", description = "The state now, in the same way.")
	private String now;

	@Option(names = { "-f", "--format" }, paramLabel = "FORMAT", defaultValue = "text", description = "text for people, json for programs, html for a page to print or to"
			+ " hang on a change that is offered. Default: text.")
	private Format format = Format.TEXT;

	@Option(names = { "-o", "--output" }, paramLabel = "FILE", description = "Write to this file.")
	private Optional<String> output = Optional.empty();

	@Option(names = "--all", description = "Tell all entries of long lists; without it text tells the first " + MOST + " of each.")
	private boolean all;

	@Option(names = "--plans", description = "Tell which plans move too, for every complaint; this may take a minute.")
	private boolean plans;

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	CompareCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException {
		Optional<Target> target = Target.of(session, output);
		Progress shown = session.progress(progress);
		try {
			RuleBase old = read(before, shown);
			RuleBase other = read(now, shown);
			shown.phase("Comparing");
			Difference difference = new Comparison().compareChecked(old, other, shown);
			List<Compared.Entry> moved = plans ? Compared.plans(old, other, difference, session.cancelled()::get) : List.of();
			shown.end();
			Compared told = Compared.of(old, other, difference, moved);
			String title = "What changes from " + before + " to " + now;
			switch (format) {
			case JSON -> write(target, CompareReport.json(difference, told));
			case HTML -> write(target, told.sheet(title));
			default -> text(target, told);
			}
			return switch (difference.verdict()) {
			case SAME -> ExitCode.FINE;
			case UNDECIDED -> ExitCode.UNDECIDED;
			default -> ExitCode.FLAWS;
			};
		} finally {
			shown.end();
		}
	}

	/** What is left out because of an error could make all the difference. */
	private RuleBase read(String given, Progress shown) throws IOException {
		if (given.endsWith(Span.PACK)) {
			try {
				return PackReader.read(session.pack(given)).rules();
			} catch (PackException e) {
				throw new CommandException(ExitCode.FILES, given + ": " + e.getMessage());
			}
		}
		Path path = session.resolve(given);
		Read read = Read.of(path, given, shown);
		List<Problem> errors = read.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		if (!errors.isEmpty()) {
			Problem first = errors.get(0);
			throw new CommandException(ExitCode.FILES, given + " has " + Say.count(errors.size(), "error") + " and cannot be compared. The first: " + first.span() + ": "
					+ first.message() + " " + first.advice());
		}
		return read.rules();
	}

	private void write(Optional<Target> target, String text) throws IOException {
		if (target.isPresent()) {
			target.get().write(text.getBytes(StandardCharsets.UTF_8));
			session.say(target.get().tell(), Style.safe("Wrote " + target.get().given()));
		} else {
			session.out().print(text);
		}
	}

	private void text(Optional<Target> target, Compared told) throws IOException {
		Style style = target.isPresent() ? Style.PLAIN : session.style();
		StringBuilder text = new StringBuilder();
		text.append(style.strong(Style.safe(told.headline()))).append('\n');
		for (Compared.Section section : told.sections()) {
			text.append('\n').append(style.strong(Style.safe(section.title()))).append('\n');
			int most = all ? section.entries().size() : Math.min(MOST, section.entries().size());
			for (Compared.Entry entry : section.entries().subList(0, most)) {
				text.append("  ").append(Style.safe(entry.text())).append('\n');
				entry.details().forEach(detail -> text.append("    ").append(Style.safe(detail)).append('\n'));
			}
			if (most < section.entries().size()) {
				text.append("  \u2026 and ").append(section.entries().size() - most).append(" more; --all tells them\n");
			}
		}
		text.append('\n').append(Style.safe(told.note())).append('\n');
		write(target, text.toString());
	}
}
